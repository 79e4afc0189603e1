/** The server, as typed calls. Everything is computed there. */

export interface Field {
  path: string;
  group: string;
  label: string;
  kind: 'text' | 'choice' | 'number' | 'flag';
  unit: string;
  low: number;
  high: number;
  step: number;
  choices: string[];
  default: number | string | boolean | null;
  defaultRule: string | null;
  required: boolean;
  help: string;
}

export interface FieldGroup {
  name: string;
  help: string;
  fields: Field[];
}

export interface Alloy {
  key: string;
  name: string;
  family: string;
  colour: [number, number, number];
  density: number;
  note: string;
}

export interface Species {
  key: string;
  name: string;
  care: string;
  disclosure: string;
}

export interface FieldTable {
  sections: { name: string; groups: FieldGroup[] }[];
  name: Field;
  alloys: Alloy[];
  species: Species[];
}

export interface Candidate {
  count: number;
  pitch_mm: number;
  stone_gap_mm: number;
  clasp_mm: number;
  total_ct: number;
  inside_circumference_mm: number;
  hinge_angle_deg: number;
  reason: string;
}

export interface Finding {
  rule: string;
  verdict: 'pass' | 'caution' | 'fail';
  where: string;
  measured: number | null;
  limit: number | null;
  unit: string;
  source: string;
  mark: string;
  cure: string;
}

export interface Report {
  brief: Record<string, unknown>;
  layout: Omit<Candidate, 'reason' | 'total_ct'> & {
    laid_flat_mm: number;
    wrist_radius_mm: number;
    hinge_height_mm: number;
    play_mm: number;
    candidates: Candidate[];
  };
  stones: { count: number; each_ct: number; each_ct_trade: number; total_ct: number };
  weights: { metal_finished_g: number; metal_cast_g: number; metal_to_melt_g: number } | null;
  findings: Finding[];
  cautions: string[];
}

export interface Numbers {
  report: Report;
  derived: Record<string, number | string>;
  candidate_count: number;
  misses: { count: number; reason: string }[];
}

export interface Spot {
  role: 'link' | 'box' | 'tongue' | 'safety' | 'pin';
  at_mm: [number, number, number];
  next: boolean;
  stone: boolean;
}

export interface FlexLimit {
  deg: number;
  touches: boolean;
  words: string;
  spots: Spot[];
}

export interface Flex {
  inward: FlexLimit;
  outward: FlexLimit;
  worn_deg: number;
  axis_mm: [number, number, number];
  next_mm: [number, number, number];
}

export interface Checked {
  report: Report;
  places: Spot[][];
}

export interface Fault {
  path: string;
  line: number | null;
  column: number | null;
  reason: string;
  hint: string;
}

export interface FileEntry {
  name: string;
  changed: string;
  bytes: number;
  working: boolean;
}

export interface FileList {
  folder: string;
  opened: string | null;
  untitled_working: boolean;
  files: FileEntry[];
}

export interface OpenedFile {
  name: string;
  text: string;
  tag: string;
  working: string | null;
}

export interface Missing {
  path: string;
  needed: string;
}

/** An answer that is no success, as the server put it. */
export class Problem extends Error {
  readonly faults: Fault[];

  constructor(readonly status: number, readonly title: string, detail: string, body: { faults?: Fault[]; missing?: Missing[]; nearest_shorter_mm?: number; nearest_longer_mm?: number } = {}) {
    super(detail);
    this.faults = body.faults ?? [];
    this.missing = body.missing ?? [];
    this.nearest = [body.nearest_shorter_mm, body.nearest_longer_mm].filter(mm => typeof mm === 'number');
  }

  /** Lengths that would work, mm. */
  readonly nearest: number[];

  /** Prices that the list lacks. */
  readonly missing: Missing[];
}

export async function call(path: string, init: RequestInit = {}): Promise<Response> {
  let response: Response;
  try {
    response = await fetch(path, init);
  } catch (slip) {
    if (slip instanceof DOMException && slip.name === 'AbortError') throw slip;
    throw new Problem(0, 'The studio does not answer', 'The program behind this page has ended or is out of reach.');
  }
  if (response.ok) return response;
  throw told(response.status, await response.json().catch(() => ({})), response.statusText);
}

const told = (status: number, body: ConstructorParameters<typeof Problem>[3] & { title?: string; detail?: string }, otherwise = '') => new Problem(status, body.title ?? 'That did not work', body.detail ?? otherwise, body);

/** Whatever went wrong, as something that can be told. */
export const problemOf = (slip: unknown, title = 'A fault of ours'): Problem => (slip instanceof Problem ? slip : new Problem(0, title, slip instanceof Error ? slip.message : String(slip)));

/** The same as one sentence. */
export function wordsOf(slip: unknown): string {
  const { title, message } = problemOf(slip);
  return `${title}: ${message}`;
}

export const json = { 'Content-Type': 'application/json' };

export function post(path: string, brief: string, stop: AbortSignal, accept?: string): Promise<Response> {
  return call(path, { method: 'POST', headers: accept ? { ...json, Accept: accept } : json, body: brief, signal: stop });
}

/** An answer that comes line by line, each a value of its own. */
export async function* eachLine(response: Response): AsyncGenerator<Record<string, unknown>> {
  const reader = response.body!.pipeThrough(new TextDecoderStream()).getReader();
  let rest = '';
  for (;;) {
    const { value, done } = await reader.read().catch((slip: unknown) => {
      if (slip instanceof DOMException && slip.name === 'AbortError') throw slip;
      throw new Problem(0, 'The answer broke off', 'The program behind this page has ended or is out of reach.');
    });
    const cut = (rest + (value ?? '')).split('\n');
    rest = cut.pop()!;
    for (const line of cut) yield JSON.parse(line);
    if (done) return;
  }
}

/** The answer is the last line; those before it say what is being done. What went wrong on the way is told there too. */
export async function lines<T>(response: Response, stage: (words: string) => void): Promise<T> {
  let answer: T | null = null;
  for await (const line of eachLine(response)) {
    if (typeof line.stage === 'string') stage(line.stage);
    else if (line.problem) throw told((line.problem as { status: number }).status, line.problem);
    else answer = line as T;
  }
  if (!answer) throw new Problem(0, 'The answer broke off', 'The computation ended before its result.');
  return answer;
}

export const api = {
  fields: async (): Promise<FieldTable> => (await call('/api/fields')).json(),
  demo: async (): Promise<string> => (await call('/api/demo')).text(),
  demoPrices: async (): Promise<string> => (await call('/api/demo/prices')).text(),
  numbers: async (brief: string, stop: AbortSignal): Promise<Numbers> => (await post('/api/piece', brief, stop)).json(),
  mesh: async (brief: string, query: string, stop: AbortSignal): Promise<ArrayBuffer> => (await post(`/api/mesh?${query}`, brief, stop)).arrayBuffer(),
  flex: async (brief: string, stop: AbortSignal): Promise<Flex> => (await post('/api/flex', brief, stop)).json(),
  checks: async (brief: string, stage: (words: string) => void, stop: AbortSignal): Promise<Checked> =>
    lines(await post('/api/checks', brief, stop, 'application/x-ndjson'), stage),
  /** Asked of a brief alone, or as a quote is. */
  exported: async (request: string, paper: string, stage: (words: string) => void, stop: AbortSignal): Promise<{ ready: string; name: string; bytes: number }> =>
    lines(await post(`/api/export?paper=${paper}`, request, stop, 'application/x-ndjson'), stage),
  files: async (): Promise<FileList> => (await call('/api/files')).json(),
  open: async (name: string): Promise<OpenedFile> => (await call(`/api/files/${encodeURIComponent(name)}`)).json(),
  save: async (name: string, text: string, tag: string | null): Promise<{ tag: string }> =>
    (await call(`/api/files/${encodeURIComponent(name)}`, { method: 'PUT', headers: tag ? { ...json, 'If-Match': tag === '*' ? '*' : `"${tag}"` } : json, body: text })).json(),
  working: async (name: string): Promise<string> => (await call(`/api/working/${encodeURIComponent(name)}`)).text(),
  keep: async (name: string, text: string, isLast = false): Promise<void> => {
    await call(`/api/working/${encodeURIComponent(name)}`, { method: 'PUT', headers: json, body: text, keepalive: isLast });
  },
  drop: async (name: string): Promise<void> => {
    await call(`/api/working/${encodeURIComponent(name)}`, { method: 'DELETE' });
  },
};
