const key = 'linewright-prices';

// As much as the server reads.
const mostBytes = 1 << 20;

/** The shop's price list. Kept in this browser, and sent only to the program behind this page. */
export class Prices {
  name = $state<string | null>(null);
  text = $state.raw<string | null>(null);
  /** Why the last file was not taken. */
  refused = $state('');

  constructor() {
    try {
      const kept = JSON.parse(localStorage.getItem(key) ?? 'null');
      if (typeof kept?.name === 'string' && typeof kept.text === 'string') [this.name, this.text] = [kept.name, kept.text];
    } catch {
      // A broken note is none: the list is asked for again.
    }
  }

  async bring(file: File): Promise<void> {
    if (file.size > mostBytes) {
      this.refused = `${file.name} is larger than a price list can be.`;
      return;
    }
    this.take(file.name, await file.text());
  }

  take(name: string, text: string): void {
    [this.name, this.text, this.refused] = [name, text, ''];
    try {
      localStorage.setItem(key, JSON.stringify({ name, text }));
    } catch {
      this.refused = 'This browser keeps nothing: the list will be asked for again next time.';
    }
  }

  /** Out of this browser. */
  putAway(): void {
    [this.name, this.text, this.refused] = [null, null, ''];
    localStorage.removeItem(key);
  }

  /** The grades that the list has for a species. */
  grades(species: string): string[] {
    try {
      const rows: { species?: string; grade?: string }[] = JSON.parse(this.text ?? '{}').stones ?? [];
      return [...new Set(rows.filter(row => row.species === species && row.grade).map(row => row.grade!))];
    } catch {
      return [];
    }
  }
}
