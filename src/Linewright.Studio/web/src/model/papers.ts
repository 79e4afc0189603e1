/** The papers of the workshop, as the server answers them. */

import { lines, post, type Missing, type Report } from './api';

export interface SheetPages {
  paper: string;
  /** Each page as an SVG. */
  pages: string[];
}

export interface Tree {
  parts: number;
  rings: { part: string; count: number; height_mm: number; first_deg: number; every_deg: number }[];
  stem_mm: number;
  stem_length_mm: number;
  button_mm: number;
  height_mm: number;
  width_mm: number;
  parts_g: number;
  sprues_g: number;
  stem_g: number;
  button_g: number;
  total_g: number;
}

export interface Sprue {
  part: string;
  count: number;
  at: number[] | null;
  sprue_mm: number;
  gate_mm: number;
  length_mm: number;
  thickest_mm: number;
  modulus_mm: number;
  feed_ratio: number;
}

export interface Casting {
  pattern_scale: number;
  polished_allowance_mm: number;
  steps: { step: string; name: string; shrink_percent: number; polished_loss_mm: number; source: string; mark: string }[];
  sprues: Sprue[];
  plates: { file: string; patterns: number; used_x_mm: number; used_y_mm: number; height_mm: number }[];
  trees: Tree[];
  metal_to_weigh_out_g: number;
  patterns_g: number;
  metal_per_pattern: number;
  notes: string[];
}

export interface PlateView {
  casting: Casting;
  plate_mm: [number, number, number];
  plates: { file: string; places: { part: string; x_mm: number; y_mm: number; turn_deg: number }[] }[];
  /** Outlines from the side, the farthest first: x and height of each corner. */
  trees: number[][][];
  patterns: { part: string; height_mm: number; lines: number[][] }[];
}

export interface Chance {
  percent: number;
  low_percent: number;
  high_percent: number;
  closed_form_percent?: number;
}

export interface Quantile {
  value: number;
  low: number;
  high: number;
}

/** How much over their least walls would be drawn for enough pieces to keep them all; without `reserve_mm` none that a brief may name does. */
export interface WallReserve {
  wanted_percent: number;
  /** How far under its limit a wall may come out. */
  shortfall_mm: number;
  reserve_mm?: number;
  reckoned_percent?: number;
  /** Empty where the piece was drawn and measured with this reserve. */
  note: string;
}

export interface Tolerance {
  pieces: number;
  seed: number;
  trees: number;
  length: { nominal_mm: number; mean_mm: number; mean_error_mm: number; deviation_mm: number; closed_form_deviation_mm: number; low_mm: Quantile; high_mm: Quantile };
  runs_free: Chance;
  clasp_closes: Chance;
  clasp_holds: Chance;
  yield: Chance;
  walls_hold: Chance;
  walls_accepted: Chance;
  gap: { wanted_percent: number; diametral_clearance_mm: Quantile; diametral_closed_form_mm: number; side_clearance_mm: Quantile; side_closed_form_mm?: number; together: Chance };
  sensitivity: { tolerance: string; field: string; spread: number; unit: string; length_share_percent: number; wall_share_percent?: number; yield_without_percent: number; yield_gain_percent: number }[];
  walls: { part: string; feature: string; count: number; nominal_mm: number; limit_mm: number; under_each: number; none_percent: number; thinnest_mm: number; to_draw_mm: number }[];
  reserves: WallReserve[];
  notes: string[];
}

export interface QuoteLine {
  group: string;
  what: string;
  amount: number;
  arithmetic: string;
  read: string;
}

export interface Quote {
  basis: { finished_g: number; melt_g: number; links: number; stones: { order: number; order_ct: number; set_ct: number; words: string[] } };
  prices: { name: string; date: string; valid_until: string | null; validity: string; note: string; currency: string };
  grade: string;
  lines: QuoteLine[];
  missing: Missing[];
  cost: number | null;
  before_tax: number | null;
  total: number | null;
  rounding: string;
  notes: string[];
  shop_notes: string[];
}

export interface GridCell {
  values: string[];
  can_be_made: boolean;
  reasons: string[];
  links: number | null;
  laid_flat_mm: number | null;
  finished_g: number | null;
  stones_ct: number | null;
  total: number | null;
}

export interface QuoteGrid {
  axes: { path: string; values: string[] }[];
  cells: GridCell[];
  solids: number;
  measured: number;
}

const withStages = 'application/x-ndjson';
type Stage = (words: string) => void;

export const papers = {
  sheet: async (brief: string, paper: string, stage: Stage, stop: AbortSignal): Promise<SheetPages> =>
    lines(await post(`/api/sheet?format=svg&paper=${paper}`, brief, stop, withStages), stage),
  plate: async (brief: string, stage: Stage, stop: AbortSignal): Promise<PlateView> => lines(await post('/api/plate', brief, stop, withStages), stage),
  tolerance: async (brief: string, pieces: number, seed: number, stop: AbortSignal): Promise<Tolerance> =>
    ((await (await post(`/api/tolerance?pieces=${pieces}&seed=${seed}`, brief, stop)).json()) as Report & { tolerance: Tolerance }).tolerance,
  quote: async (request: string, stop: AbortSignal): Promise<Quote> => (await post('/api/quote', request, stop)).json(),
  grid: async (request: string, stage: Stage, stop: AbortSignal): Promise<QuoteGrid> => lines(await post('/api/quote', request, stop, withStages), stage),
  /** A file of the door, under the name that it is given there. */
  file: async (door: string, body: string): Promise<File> => {
    const answer = await post(door, body, new AbortController().signal);
    const said = answer.headers.get('Content-Disposition') ?? '';
    // Letters beyond ASCII stand in the second, written name alone.
    const written = /filename\*=UTF-8''([^;]+)/i.exec(said)?.[1];
    const name = written === undefined ? (/filename="?([^";]+)/.exec(said)?.[1] ?? 'paper') : decodeURIComponent(written);
    return new File([await answer.blob()], name, { type: answer.headers.get('Content-Type') ?? '' });
  },
};

/** Hands a file to the browser, which asks or puts it where downloads go. */
export function hand(file: File): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
