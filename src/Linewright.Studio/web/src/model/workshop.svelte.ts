import { Problem } from './api';
import type { Brief } from './brief.svelte';
import { Fresh } from './fresh.svelte';
import { Latest } from './latest';
import type { Live } from './live.svelte';
import { hand, papers, type PlateView, type Quote, type QuoteGrid, type SheetPages, type Tolerance } from './papers';
import { Prices } from './prices.svelte';
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
  grade = $state<string | null>(null);
  readonly sheet = new Fresh<SheetPages>();
  readonly casting = new Fresh<PlateView>();
  readonly tolerance = new Fresh<Tolerance>();
  readonly quote = new Fresh<Quote>();
  readonly grid = new Fresh<QuoteGrid>();
  readonly prices = new Prices();
  /** What to lay side by side; null for what lies about the brief. */
  readonly alternatives = $state<{ metals: string[] | null; stones: string | null; lengths: string | null }>({ metals: null, stones: null, lengths: null });
  /** The request of the grid on the table: its workbook is asked with the same. */
  laidOut = $state('');
  /** What the last file that was asked for left to say. */
  notice = $state('');

  private readonly drawing = new Latest();
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

  /** A quote's request: brief and prices as the text of their files, so that faults are found at their places. */
  request = $derived.by(() => JSON.stringify({ brief: this.brief.text, prices: this.prices.text, grade: this.grade }));

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
    if (this.grid.isBusy && JSON.parse(this.laidOut).brief !== text) this.grid.forget();
    if (this.paper === 'quote' && this.prices.text !== null) this.whenChecked(this.quote, this.request, (_, stop) => papers.quote(this.request, stop));
    else this.quote.forget();
  }

  /** Asks the door for a file and hands it out. */
  async save(door: string, body = this.brief.text): Promise<void> {
    this.notice = '';
    try {
      hand(await papers.file(door, body));
    } catch (slip) {
      this.notice = slip instanceof Problem ? `${slip.title}: ${slip.message}` : String(slip);
    }
  }

  /** A file of the quote; what the prices lack is named. */
  saveQuote(format: string): Promise<void> {
    return this.save(`/api/quote?format=${format}&paper=${this.size}`, this.request);
  }

  /** Lays alternatives side by side. */
  layOut(grid: Record<string, (string | number)[]>): void {
    const request = JSON.stringify({ brief: this.brief.text, prices: this.prices.text, grade: this.grade, grid });
    this.grid.forget();
    this.laidOut = request;
    void this.grid.ask(request, (stage, stop) => papers.grid(request, stage, stop));
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
