import type { LengthUnit } from './units';

export type Theme = 'light' | 'dark';

const key = 'linewright-studio';

/** How this person likes the studio; kept in this browser. */
class Prefs {
  theme = $state<Theme>(matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light');
  unit = $state<LengthUnit>('mm');
  showsDimensions = $state(false);
  /** The brief that was open last. */
  file = $state<string | null>(null);

  constructor() {
    try {
      Object.assign(this, JSON.parse(localStorage.getItem(key) ?? '{}'));
    } catch {
      // A broken note of habits is no habits.
    }
  }

  keep(): void {
    const { theme, unit, showsDimensions, file } = this;
    localStorage.setItem(key, JSON.stringify({ theme, unit, showsDimensions, file }));
  }
}

export const prefs = new Prefs();

/** True where movement on the screen is not wanted. */
export const calm = () => matchMedia('(prefers-reduced-motion: reduce)').matches;
