import { api, wordsOf } from './api';
import { keep, kept } from './notes';

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
    const list = kept<{ name: unknown; text: unknown }>('localStorage', key);
    if (typeof list?.name === 'string' && typeof list.text === 'string') [this.name, this.text] = [list.name, list.text];
  }

  async bring(file: File): Promise<void> {
    if (file.size > mostBytes) {
      this.refused = `${file.name} is larger than a price list can be.`;
      return;
    }
    try {
      this.take(file.name, await file.text());
    } catch {
      this.refused = `${file.name} cannot be read.`;
    }
  }

  /** A list with invented prices, to try what a quote looks like. */
  async invent(): Promise<void> {
    try {
      this.take('prices-lantern-quay.json', await api.demoPrices());
    } catch (slip) {
      this.refused = wordsOf(slip);
    }
  }

  take(name: string, text: string): void {
    [this.name, this.text, this.refused] = [name, text, ''];
    if (!keep('localStorage', key, { name, text })) this.refused = 'This browser keeps nothing: the list will be asked for again next time.';
  }

  /** Out of this browser. */
  putAway(): void {
    [this.name, this.text, this.refused] = [null, null, ''];
    keep('localStorage', key, null);
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
