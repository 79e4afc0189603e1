import { problemOf, type Problem } from './api';

/** An answer that follows what it was asked of: the last one stays in sight until the next is there. */
export class Fresh<T> {
  value = $state.raw<T | null>(null);
  problem = $state.raw<Problem | null>(null);
  /** What is being done, in words. */
  stage = $state('');
  isBusy = $state(false);
  /** What the value was asked of; another key makes it old. */
  answered = $state('');
  private key = '';
  private waiting: ReturnType<typeof setTimeout> | undefined;
  private stop = new AbortController();

  /** Asks, unless the same was asked last. What was asked before is given up. Ends with the answer where nothing is waited for. */
  async ask(key: string, work: (stage: (words: string) => void, stop: AbortSignal) => Promise<T>, afterMs = 0): Promise<void> {
    if (key === this.key) return;
    this.forget();
    this.key = key;
    const stop = this.stop.signal;
    if (afterMs === 0) await this.run(key, work, stop);
    else this.waiting = setTimeout(() => void this.run(key, work, stop), afterMs);
  }

  /** Gives up what is being asked, and what was wrong with it; the same may be asked again. */
  forget(): void {
    clearTimeout(this.waiting);
    this.stop.abort();
    this.stop = new AbortController();
    this.key = this.answered;
    this.isBusy = false;
    this.stage = '';
    this.problem = null;
  }

  private async run(key: string, work: (stage: (words: string) => void, stop: AbortSignal) => Promise<T>, stop: AbortSignal): Promise<void> {
    this.isBusy = true;
    try {
      const value = await work(words => (this.stage = stop.aborted ? this.stage : words), stop);
      if (stop.aborted) return;
      this.value = value;
      this.problem = null;
      this.answered = key;
    } catch (slip) {
      if (stop.aborted) return;
      this.problem = problemOf(slip);
    }
    this.isBusy = false;
    this.stage = '';
  }
}
