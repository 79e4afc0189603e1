import { wordsOf } from './api';
import type { Brief } from './brief.svelte';
import { Fresh } from './fresh.svelte';
import { Latest } from './latest';
import type { Live } from './live.svelte';
import { hand, papers, type PlateView, type Quote, type QuoteGrid, type SheetPages, type Tolerance } from './papers';
import { Prices } from './prices.svelte';
import type { LengthUnit } from './units';
import { unseen } from './unseen';

export type PaperName = 'sheet' | 'casting' | 'tolerance' | 'quote';

// A hand that rests this long has let go.
const restMs = 280;

/** The workshop's papers beside the piece. Only the one that lies on the table is kept in step with the brief. */
export class Workshop {
  paper = $state<PaperName | null>(null);
  size = $state<'a4' | 'letter'>('a4');
  pieces = $state(10_000);
  seed = $state(1);
  /** The grade that was chosen; it holds where the list has it for the stones of the brief. */
  chosenGrade = $state<string | null>(null);
  readonly sheet = new Fresh<SheetPages>();
  readonly casting = new Fresh<PlateView>();
  readonly tolerance = new Fresh<Tolerance>();
  readonly quote = new Fresh<Quote>();
  readonly grid = new Fresh<QuoteGrid>();
  readonly prices = new Prices();
  /** What to lay side by side; null for what lies about the brief. Lengths are in the unit in which they were written. */
  readonly alternatives = $state<{ metals: string[] | null; stones: string | null; lengths: { text: string; unit: LengthUnit } | null }>({ metals: null, stones: null, lengths: null });
  /** Currency of the grid on the table. */
  laidOutIn = $state('');
  /** What the last file that was asked for left to say. */
  notice = $state('');

  private readonly drawing = new Latest();
  private beingLaid = '';
  private solids = '';

  constructor(
    private readonly brief: Brief,
    private readonly live: Live,
  ) {}

  /** True where the paper on the table belongs to the brief as it is. */
  isCurrent = $derived.by(() => {
    switch (this.paper) {
      case 'sheet':
        return this.sheet.answered === this.sheetKey;
      case 'casting':
        return this.casting.answered === this.brief.text;
      case 'tolerance':
        return this.tolerance.answered === this.toleranceKey;
      case 'quote':
        return this.prices.text === null || this.quote.answered === this.request;
      default:
        return true;
    }
  });

  /** The grades that the list has for the stones of the brief. */
  grades = $derived.by(() => this.prices.grades(String(this.brief.values['stone.species'] ?? 'diamond')));
  grade = $derived.by(() => (this.chosenGrade !== null && this.grades.includes(this.chosenGrade) ? this.chosenGrade : null));

  /** A quote's request: brief and prices as the text of their files, so that faults are found at their places. */
  request = $derived.by(() => JSON.stringify({ brief: this.brief.text, prices: this.prices.text, grade: this.grade }));

  /** True where the quote on the table was reckoned with the list that lies there. */
  isOfThisList = $derived.by(() => this.quote.value !== null && JSON.parse(this.quote.answered).prices === this.prices.text);

  /** True where the grid on the table was reckoned for something else than what lies there now. */
  isGridOld = $derived.by(() => {
    if (this.grid.value === null) return false;
    const { grid: _, ...asked } = JSON.parse(this.grid.answered);
    return JSON.stringify(asked) !== this.request;
  });

  private sheetKey = $derived.by(() => `${this.size} ${this.brief.text}`);
  private toleranceKey = $derived.by(() => `${this.pieces} ${this.seed} ${this.brief.text}`);

  /** Asks for what the paper on the table lacks. Sheet and castings wait for the checks, which mesh the same parts. */
  follow(): void {
    const text = this.brief.text;
    if (this.paper === 'sheet') this.whenChecked(this.sheet, this.sheetKey, (stage, stop) => papers.sheet(text, this.size, stage, stop));
    else this.sheet.forget();
    if (this.paper === 'casting') this.whenChecked(this.casting, text, (stage, stop) => papers.plate(text, stage, stop));
    else this.casting.forget();
    if (this.paper === 'tolerance') this.draw(text);

    // Alternatives to a brief that is being changed would only keep its checks waiting.
    if (this.grid.isBusy && this.beingLaid !== this.request) this.grid.forget();
    if (this.paper === 'quote' && this.prices.text !== null) this.whenChecked(this.quote, this.request, (_, stop) => papers.quote(this.request, stop));
    else this.quote.forget();
  }

  /** Asks the door for a file and hands it out. */
  async save(door: string, body = this.brief.text): Promise<void> {
    this.notice = '';
    try {
      hand(await papers.file(door, body));
    } catch (slip) {
      this.notice = wordsOf(slip);
    }
  }

  /** A file of the quote; what the prices lack is named. */
  saveQuote(format: string): Promise<void> {
    return this.save(`/api/quote?format=${format}&paper=${this.size}`, this.request);
  }

  /** A file of the grid on the table: asked with the very request that it answers, it costs nothing more. */
  saveGrid(format: string): Promise<void> {
    return this.save(`/api/quote?format=${format}`, this.grid.answered);
  }

  /** Lays alternatives side by side. */
  layOut(grid: Record<string, (string | number)[]>, currency: string): void {
    const request = JSON.stringify({ ...JSON.parse(this.request), grid });
    this.grid.forget();
    this.beingLaid = this.request;
    void this.grid.ask(request, async (stage, stop) => {
      const laid = await papers.grid(request, stage, stop);
      if (!stop.aborted) this.laidOutIn = currency;
      return laid;
    });
  }

  /** Lays a paper on the table, or with null clears it. */
  lay(paper: PaperName | null): void {
    this.paper = paper;
    this.notice = '';
  }

  private whenChecked<T>(paper: Fresh<T>, key: string, work: (stage: (words: string) => void, stop: AbortSignal) => Promise<T>): void {
    if (this.live.isCurrent) void paper.ask(key, work);
    else paper.forget();
  }

  // A changed spread is followed while the hand moves; anything else waits until it rests.
  private draw(text: string): void {
    const solids = this.brief.textWithout(unseen);
    const [key, pieces, seed] = [this.toleranceKey, this.pieces, this.seed];
    if (solids === this.solids) {
      this.drawing.ask(() => this.tolerance.ask(key, (_, stop) => papers.tolerance(text, pieces, seed, stop)));
      return;
    }
    void this.tolerance.ask(
      key,
      async (stage, stop) => {
        stage('Measuring the walls');
        const lot = await papers.tolerance(text, pieces, seed, stop);
        if (!stop.aborted) this.solids = solids;
        return lot;
      },
      restMs,
    );
  }
}
