/** Runs one job at a time; of those that come meanwhile only the latest is kept. */
export class Latest {
  private busy = false;
  private waiting: (() => Promise<void>) | null = null;
  private running: Promise<void> = Promise.resolve();

  ask(job: () => Promise<void>): void {
    if (this.busy) {
      this.waiting = job;
      return;
    }
    this.running = this.run(job);
  }

  /** Ends when no job runs and none waits. */
  async idle(): Promise<void> {
    while (this.busy) await this.running;
  }

  private async run(job: () => Promise<void>): Promise<void> {
    this.busy = true;
    try {
      await job();
    } finally {
      this.busy = false;
      const next = this.waiting;
      this.waiting = null;
      if (next) this.running = this.run(next);
    }
  }
}
