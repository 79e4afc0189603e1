import type { FieldTable } from './api';

export type Value = number | string | boolean;
export type Values = Readonly<Record<string, Value>>;

// Changes of one control that follow each other this fast are one step to undo.
const oneStepMs = 900;
const mostSteps = 500;

/** The brief in the designer's hands: only what was written, with every step kept for undo. */
export class Brief {
  values = $state.raw<Values>({});
  canUndo = $derived.by(() => this.steps > 0);
  canRedo = $derived.by(() => this.ahead > 0);

  private past: Values[] = [];
  private future: Values[] = [];
  private steps = $state(0);
  private ahead = $state(0);
  private lastPath = '';
  private lastAt = 0;
  private order: string[] = [];

  /** The order in which fields are written. */
  use(table: FieldTable): void {
    this.order = ['$schema', 'name', ...table.sections.flatMap(section => section.groups.flatMap(group => group.fields.map(field => field.path)))];
  }

  /** Opens another brief; what was done before is forgotten. */
  load(text: string): void {
    this.values = flatten(JSON.parse(text));
    this.past = [];
    this.future = [];
    this.lastPath = '';
    this.count();
  }

  /** Writes a field, or takes it out with undefined. */
  set(path: string, value: Value | undefined): void {
    this.setAll({ [path]: value }, path);
  }

  /** Writes several fields in one step. */
  setAll(changes: Record<string, Value | undefined>, gesture = ''): void {
    const next: Record<string, Value> = { ...this.values };
    for (const [path, value] of Object.entries(changes)) {
      if (value === undefined) delete next[path];
      else next[path] = value;
    }
    if (same(next, this.values)) return;
    const now = performance.now();
    const goesOn = gesture !== '' && gesture === this.lastPath && now - this.lastAt < oneStepMs && this.past.length > 0;
    if (!goesOn) {
      this.past.push(this.values);
      if (this.past.length > mostSteps) this.past.shift();
    }
    this.lastPath = gesture;
    this.lastAt = now;
    this.future = [];
    this.values = next;
    this.count();
  }

  undo(): void {
    const before = this.past.pop();
    if (!before) return;
    this.future.push(this.values);
    this.values = before;
    this.lastPath = '';
    this.count();
  }

  redo(): void {
    const after = this.future.pop();
    if (!after) return;
    this.past.push(this.values);
    this.values = after;
    this.lastPath = '';
    this.count();
  }

  /** The brief as a file. */
  get text(): string {
    return write(this.values, this.order);
  }

  /** The brief without some of its fields. */
  textWithout(paths: string[]): string {
    return write(Object.fromEntries(Object.entries(this.values).filter(([path]) => !paths.includes(path))), this.order);
  }

  number(path: string): number | null {
    const value = this.values[path];
    return typeof value === 'number' ? value : null;
  }

  private count(): void {
    this.steps = this.past.length;
    this.ahead = this.future.length;
  }
}

function same(a: Values, b: Values): boolean {
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every(key => a[key] === b[key]);
}

// { stone: { diameter_mm: 3 } } becomes { 'stone.diameter_mm': 3 }.
function flatten(brief: Record<string, unknown>): Values {
  const values: Record<string, Value> = {};
  for (const [key, value] of Object.entries(brief)) {
    if (value !== null && typeof value === 'object') {
      for (const [name, inner] of Object.entries(value)) values[`${key}.${name}`] = inner as Value;
    } else {
      values[key] = value as Value;
    }
  }
  return values;
}

function write(values: Values, order: string[]): string {
  const rank = (path: string) => (order.includes(path) ? order.indexOf(path) : order.length);
  const brief: Record<string, unknown> = {};
  for (const path of Object.keys(values).sort((a, b) => rank(a) - rank(b))) {
    const [group, name] = path.split('.');
    if (name === undefined) brief[group] = values[path];
    else ((brief[group] ??= {}) as Record<string, Value>)[name] = values[path];
  }
  return `${JSON.stringify(brief, null, 2)}\n`;
}
