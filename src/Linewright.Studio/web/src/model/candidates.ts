import type { Candidate } from './api';
import type { Value, Values } from './brief.svelte';

/** The fields by which a layout is picked: the gap asked for, and a clasp as long as it leaves. */
export const pins = ['link.stone_gap_mm', 'clasp.length_min_mm', 'clasp.length_max_mm'];

// The clasp may move by this much, so that the line still closes exactly.
const slackMm = 0.02;

const round = (mm: number, way: (value: number) => number) => way(mm * 1000) / 1000;

/** True where the brief says which layout to take. */
export function pinned(values: Values): boolean {
  const [shortest, longest] = [values['clasp.length_min_mm'], values['clasp.length_max_mm']];
  return typeof shortest === 'number' && typeof longest === 'number' && longest - shortest <= 3 * slackMm;
}

/** What to write so that the layout finds this candidate first. */
export function pick(candidate: Candidate): Record<string, Value> {
  return {
    'link.stone_gap_mm': round(candidate.stone_gap_mm, Math.round),
    'clasp.length_min_mm': round(candidate.clasp_mm - slackMm, Math.floor),
    'clasp.length_max_mm': round(candidate.clasp_mm + slackMm, Math.ceil),
  };
}

/** What to take out so that the layout chooses by itself. */
export const unpick: Record<string, undefined> = Object.fromEntries(pins.map(path => [path, undefined]));
