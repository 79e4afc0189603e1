import { keep, kept } from './notes';
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
    Object.assign(this, kept('localStorage', key));
  }

  keep(): void {
    const { theme, unit, showsDimensions, file } = this;
    keep('localStorage', key, { theme, unit, showsDimensions, file });
  }
}

export const prefs = new Prefs();

/** True where movement on the screen is not wanted. */
export const calm = () => matchMedia('(prefers-reduced-motion: reduce)').matches;
