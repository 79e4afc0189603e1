/** Runs one job at a time; of those that come meanwhile only the latest is kept. */
export class Latest {
  private busy = false;
  private waiting: (() => Promise<void>) | null = null;

  ask(job: () => Promise<void>): void {
    if (this.busy) {
      this.waiting = job;
      return;
    }
    void this.run(job);
  }

  /** True while a newer job waits. */
  get isStale(): boolean {
    return this.waiting !== null;
  }

  private async run(job: () => Promise<void>): Promise<void> {
    this.busy = true;
    try {
      await job();
    } finally {
      this.busy = false;
      const next = this.waiting;
      this.waiting = null;
      if (next) void this.run(next);
    }
  }
}
