import { api, Problem, problemOf, type Checked, type Flex, type Numbers } from './api';
import type { Brief } from './brief.svelte';
import { pinned, pins } from './candidates';
import { Latest } from './latest';
import { unseen } from './unseen';
import { lacks, type Packet, type Role } from '../view/packet';

// A hand that rests this long has let go.
const restMs = 280;

/** Milliseconds from a control's event to what it asked for, for the tests and for whoever wonders. */
export interface Figures {
  numbersMs: number[];
  previewMs: number[];
}

/** Keeps numbers, surfaces and checks in step with the brief: at once while a control moves, in full once it rests. */
export class Live {
  numbers = $state.raw<Numbers | null>(null);
  /** Every layout that closes, as if none had been picked. */
  free = $state.raw<Numbers | null>(null);
  problem = $state.raw<Problem | null>(null);
  checked = $state.raw<Checked | null>(null);
  flex = $state.raw<Flex | null>(null);
  /** What is being computed, in words; empty at rest. */
  stage = $state('');
  state = $state<'set' | 'cast'>('set');
  /** Metal by the surfaces on screen, g. */
  roughMetalG = $state<number | null>(null);
  /** True where the findings belong to the brief as it is. */
  isCurrent = $state(false);
  readonly figures: Figures = { numbersMs: [], previewMs: [] };

  private readonly numbering = new Latest();
  private readonly meshing = new Latest();
  private resting: ReturnType<typeof setTimeout> | undefined;
  private rest = new AbortController();
  private clasp = new AbortController();
  private shape = '';
  private looks = '';
  private away = false;
  /** What stands on the stage in full. */
  private shown = '';
  private readonly volumes = new Map<Role, number>();

  constructor(
    private readonly brief: Brief,
    private readonly take: (bytes: ArrayBuffer) => Packet,
    private readonly densityOf: (metal: string) => number,
  ) {}

  /** The brief has changed; at is when the hand moved. */
  changed(at = performance.now(), isQuick = true): void {
    const text = this.brief.text;

    // Another name makes no other piece.
    const shape = this.brief.textWithout(['name', '$schema']);
    if (shape === this.shape && isQuick) return;
    this.shape = shape;
    this.isCurrent = false;
    this.rest.abort();
    this.rest = new AbortController();
    this.clasp.abort();
    this.clasp = new AbortController();
    clearTimeout(this.resting);
    this.numbering.ask(() => this.number(text, at));

    // Another spread is to be checked, but looks the same.
    const looks = `${this.state} ${this.brief.textWithout(unseen)}`;
    if (isQuick && looks !== this.looks) this.meshing.ask(() => this.preview(text, at));
    this.looks = looks;
    this.resting = setTimeout(() => void this.finish(text, looks, this.rest.signal), isQuick ? restMs : 0);
  }

  /** Shows the parts as they leave the casting, or as they are worn. */
  show(state: 'set' | 'cast'): void {
    this.state = state;
    this.changed(performance.now(), false);
  }

  /** A paper lies before the piece, or is taken away again: what nobody sees is not meshed in full. */
  set isAway(isAway: boolean) {
    if (isAway === this.away) return;
    this.away = isAway;
    if (!isAway && this.looks !== '' && this.looks !== this.shown) this.changed(performance.now(), false);
  }

  private async number(text: string, at: number): Promise<void> {
    const stop = new AbortController().signal;
    try {
      this.numbers = await api.numbers(text, stop);
      this.problem = null;
      this.figures.numbersMs.push(performance.now() - at);
      this.free = pinned(this.brief.values) ? await api.numbers(this.brief.textWithout(pins), stop) : this.numbers;
    } catch (slip) {
      this.fail(slip, true);
    }
  }

  private async preview(text: string, at: number): Promise<void> {
    // The link is followed to its end; the clasp's turn ends with the next move of the hand.
    const stop = new AbortController().signal;
    const clasp = this.clasp.signal;
    try {
      this.put(await api.mesh(text, `quality=moving&state=${this.state}&parts=link,pin`, stop));
      this.figures.previewMs.push(performance.now() - at);
      if (!clasp.aborted) this.put(await api.mesh(text, `quality=moving&state=${this.state}&parts=box,tongue,safety`, clasp), clasp);
    } catch (slip) {
      this.fail(slip);
    }
  }

  // In full: surfaces as the files have them, the joint's motion, every check.
  private async finish(text: string, looks: string, stop: AbortSignal): Promise<void> {
    try {
      // Not beside a preview: it would wait for a core.
      await this.meshing.idle();
      if (stop.aborted) return;
      if (looks !== this.shown) await this.inFull(text, looks, stop);
      if (stop.aborted) return;
      this.checked = await api.checks(text, words => (this.stage = stop.aborted ? this.stage : words), stop);
      this.isCurrent = true;
      this.stage = '';
    } catch (slip) {
      if (stop.aborted) return;
      this.stage = '';
      this.fail(slip);
    }
  }

  // What a paper lies before is left for later.
  private async inFull(text: string, looks: string, stop: AbortSignal): Promise<void> {
    this.stage = 'Meshing';
    for (const quality of ['still', 'close']) {
      if (this.away || stop.aborted) return;
      this.put(await api.mesh(text, `quality=${quality}&state=${this.state}`, stop), stop);
    }
    if (this.away || stop.aborted) return;
    this.flex = await api.flex(text, stop);
    this.shown = looks;
  }

  private put(bytes: ArrayBuffer, stop?: AbortSignal): void {
    if (stop?.aborted) return;
    const packet = this.take(bytes);
    if (packet.state !== 'set' || packet.quality === 'close') return;
    for (const part of packet.parts) this.volumes.set(part.role, part.volumeMm3 * part.count);

    // A joint that turns on no pin has none to weigh.
    for (const role of this.volumes.keys()) if (lacks(packet, role)) this.volumes.delete(role);
    const metal = this.brief.values.metal;
    const volume = [...this.volumes.values()].reduce((sum, one) => sum + one, 0);
    this.roughMetalG = typeof metal === 'string' ? (volume / 1000) * this.densityOf(metal) : null;
  }

  // What is wrong with a brief is the numbers' to say: they are never behind it.
  private fail(slip: unknown, isOfNumbers = false): void {
    if (slip instanceof DOMException && slip.name === 'AbortError') return;
    if (!isOfNumbers && slip instanceof Problem && (slip.status === 400 || slip.status === 422)) return;
    this.problem = problemOf(slip);
  }
}
