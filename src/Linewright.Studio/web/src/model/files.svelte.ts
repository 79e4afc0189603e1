import { api, Problem, wordsOf, type FileList } from './api';
import type { Brief } from './brief.svelte';
import { keep, kept } from './notes';
import { prefs } from './prefs.svelte';

const untitled = 'untitled.json';

// What this page has open, so that it is there again when the page is loaded anew; empty for work without a file.
const openKey = 'linewright-studio-open';

// Work is kept beside the file this soon after a change.
const keepMs = 350;

/** The piece as a file: open, save, and the copy that outlives a crash. */
export class Files {
  name = $state<string | null>(null);
  list = $state.raw<FileList | null>(null);
  /** What the last save or open left to say. */
  notice = $state('');
  /** Faults of a file that could not be opened. */
  refused = $state.raw<Problem | null>(null);
  private saved = $state('');
  private tag: string | null = null;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private keeping: Promise<void> = Promise.resolve();
  private turn = 0;

  constructor(private readonly brief: Brief) {}

  isUnsaved = $derived.by(() => this.brief.text !== this.saved);

  /** At the start: what this page had open before it was loaded again, else the brief asked for, else the one open last, else work without a file, else the demo piece. */
  async begin(): Promise<void> {
    const [list, demo] = await Promise.all([api.files(), api.demo()]);
    this.list = list;
    const known = (name: string | null) => name !== null && list.files.some(file => file.name === name);
    const here = kept<string>('sessionStorage', openKey);
    const asked = here === '' || known(here) ? here : (list.opened ?? prefs.file);
    if (known(asked)) {
      await this.open(asked!);
      if (this.name) {
        if (list.untitled_working) this.notice ||= 'Work without a file is kept as well: New brings it back.';
        return;
      }
    }
    this.brief.load(demo);
    this.saved = this.brief.text;
    if (this.list.untitled_working) {
      this.restore(await api.working(untitled), 'Your work without a file is back.');
    }
  }

  async refresh(): Promise<void> {
    this.list = await api.files();
  }

  async open(name: string): Promise<void> {
    const turn = ++this.turn;
    const file = await api.open(name);
    if (!(await this.isSound(file.text, name)) || turn !== this.turn) return;
    this.brief.load(file.text);
    this.saved = this.brief.text;
    this.tag = file.tag;
    this.remember(name);
    this.notice = '';
    if (file.working) this.restore(file.working, 'Work that had not been saved is back. Undo returns to the file.');
  }

  /** Takes a brief that was dropped on the page or chosen from elsewhere. */
  async bring(file: File): Promise<void> {
    const turn = ++this.turn;
    const text = await file.text();
    if (!(await this.isSound(text, file.name)) || turn !== this.turn) return;
    this.brief.load(text);
    this.saved = '';
    this.tag = null;
    this.remember(null);
    this.notice = `${file.name} is open as a new piece.`;
  }

  /** Begins anew. Work without a file that lies there from another time was never shown, so it is brought back instead of thrown away. */
  async fresh(): Promise<void> {
    const turn = ++this.turn;
    const demo = await api.demo();
    const work = this.name === null ? null : await api.working(untitled).catch(() => null);
    if (turn !== this.turn) return;
    await this.keeping;
    this.brief.load(demo);
    this.saved = this.brief.text;
    this.tag = null;
    const hadName = this.name !== null;
    this.remember(null);
    this.notice = '';
    if (work !== null) this.restore(work, 'Your work without a file is back. Undo leaves the demo piece.');
    else if (!hadName) await api.drop(untitled);
  }

  /** Saves under the name it has, or under a new one. */
  async save(name = this.name, over = false): Promise<boolean> {
    if (!name) return false;
    const text = this.brief.text;
    clearTimeout(this.timer);
    this.timer = undefined;
    const isSame = name === this.name;
    const before = this.name ?? untitled;

    // A copy that is still on its way would outlive what it is a copy of.
    await this.keeping;
    const { tag } = await api.save(name, text, over ? '*' : isSame ? this.tag : null);
    this.saved = text;
    this.tag = tag;
    this.remember(name);
    this.notice = `Saved as ${name}.`;
    if (!isSame) await api.drop(before);
    if (this.isUnsaved) this.keepSoon();
    void this.refresh().catch(() => {});
    return true;
  }

  /** Keeps the work beside the file, a moment after the first change since it was last kept. */
  keepSoon(): void {
    this.timer ??= setTimeout(() => {
      this.timer = undefined;
      void this.keepNow();
    }, keepMs);
  }

  keepNow(isLast = false): Promise<void> {
    return (this.keeping = this.keepBeside(isLast));
  }

  private async keepBeside(isLast: boolean): Promise<void> {
    try {
      // Undone back to what is saved, there is nothing to keep.
      if (this.isUnsaved) await api.keep(this.name ?? untitled, this.brief.text, isLast);
      else await api.drop(this.name ?? untitled);
    } catch (slip) {
      this.notice = `${wordsOf(slip)} Your work is still here; save it once the studio answers again.`;
    }
  }

  private restore(text: string, notice: string): void {
    try {
      const before = this.brief.values;
      this.brief.load(text);
      const after = this.brief.values;
      const gone = Object.fromEntries(Object.keys(before).filter(path => !(path in after)).map(path => [path, undefined]));
      this.brief.load(this.saved || text);
      this.brief.setAll({ ...gone, ...after });
      this.notice = notice;
    } catch {
      this.notice = 'A copy of unsaved work could not be read.';
    }
  }

  private remember(name: string | null): void {
    this.name = name;
    prefs.file = name;
    prefs.keep();
    keep('sessionStorage', openKey, name ?? '');
  }

  // The server reads briefs; a page that cannot be read must not replace the one on screen.
  private async isSound(text: string, name: string): Promise<boolean> {
    try {
      await api.numbers(text, new AbortController().signal);
      this.refused = null;
      return true;
    } catch (slip) {
      if (slip instanceof Problem && slip.status === 422) return true;
      this.refused = slip instanceof Problem ? new Problem(slip.status, `${name} cannot be opened`, slip.message, { faults: slip.faults }) : new Problem(0, name, String(slip));
      return false;
    }
  }
}
