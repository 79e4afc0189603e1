import { call, eachLine, json, Problem } from './api';
import { Latest } from './latest';
import { keep, kept } from './notes';

/** What a picture is ordered with. */
export interface ShotOrder {
  scene: string;
  width: number;
  height: number;
  quality: string;
  ground: string;
  transparent: boolean;
  /** The stone that is sharp, from 1 at the tongue; null by rule. */
  focus: number | null;
  seed: number;
  denoise: boolean;
}

/** How far a picture is, as the server tells it. */
export interface Shot {
  picture: string;
  state: 'preparing' | 'drawing' | 'done' | 'stopped' | 'failed';
  stage: string;
  scene: string;
  width: number;
  height: number;
  transparent: boolean;
  denoise: boolean;
  pass: number;
  samples: number;
  noise_percent: number | null;
  share: number;
  spent_s: number;
  left_s: number | null;
  view: number;
  name: string;
  reason: string | null;
}

// Which picture this page took of which piece, so that a page that is loaded again knows.
const key = 'linewright-studio-shot';

/** Pictures taken from this page: the order, the one on the desk, and what there is to see of it. */
export class Shots {
  order = $state<ShotOrder>({ scene: 'closed', width: 1920, height: 1080, quality: 'good', ground: 'paper', transparent: false, focus: null, seed: 1, denoise: true });
  shot = $state.raw<Shot | null>(null);
  problem = $state.raw<Problem | null>(null);
  /** Address of what is to be seen, empty before there is anything. */
  look = $state('');
  isWhole = $state(false);
  /** The piece it was taken of, as text; empty where that is not known. */
  takenOf = $state('');
  /** Milestones for who listens instead of looking. */
  said = $state('');
  private isAsking = $state(false);
  private isUnwanted = false;
  isBusy = $derived.by(() => this.isAsking || this.shot?.state === 'preparing' || this.shot?.state === 'drawing');

  private readonly looking = new Latest();
  private current = '';
  private shown = '';
  private quarters = 0;

  /** Orders a picture of a brief; piece is what must change for it to be another one. */
  async take(brief: string, piece: string): Promise<void> {
    const { scene, width, height, quality, ground, transparent, focus, seed, denoise } = this.order;
    const query = new URLSearchParams({ scene, size: `${width}x${height}`, quality, ground, transparent: String(transparent), seed: String(seed), denoise: denoise ? 'on' : 'off' });
    if (focus !== null) query.set('focus', String(focus));
    this.problem = null;
    this.said = '';
    this.quarters = 0;
    this.isUnwanted = false;
    this.isAsking = true;
    try {
      const begun: Shot = await (await call(`/api/picture?${query}`, { method: 'POST', headers: json, body: brief })).json();
      this.shut();
      this.takenOf = piece;
      keep('sessionStorage', key, { picture: begun.picture, piece });
      this.isAsking = false;
      if (this.isUnwanted) await call(begun.picture, { method: 'DELETE' });
      await this.follow(begun);
    } catch (slip) {
      this.isAsking = false;
      this.fail(slip);
    }
  }

  /** Finds a picture that this page took before it was loaded again, or that is being drawn for another window. */
  async resume(): Promise<void> {
    if (this.shot) return;
    try {
      const { latest }: { latest: Shot | null } = await (await call('/api/picture')).json();
      const { picture = '', piece = '' } = kept<{ picture: string; piece: string }>('sessionStorage', key) ?? {};
      if (!latest || this.shot || (picture !== latest.picture && latest.state !== 'drawing')) return;
      this.takenOf = picture === latest.picture ? piece : '';
      await this.follow(latest);
    } catch (slip) {
      this.fail(slip);
    }
  }

  async stop(): Promise<void> {
    // Ordered a moment ago, it has no address yet by which to stop it.
    if (this.isAsking) this.isUnwanted = true;
    if (!this.shot || this.isAsking) return;
    try {
      this.put(await (await call(this.shot.picture, { method: 'DELETE' })).json());
    } catch (slip) {
      this.fail(slip);
    }
  }

  /** Hands a file to the browser. */
  save(format: 'png' | 'png16' | 'pfm'): void {
    const link = document.createElement('a');
    link.href = `${this.shot!.picture}/file?format=${format}`;
    link.download = '';
    link.click();
  }

  /** Shows every pixel, or as many as a screen has. */
  zoom(on: boolean): void {
    this.isWhole = on;
    this.see();
  }

  private async follow(begun: Shot): Promise<void> {
    this.current = begun.picture;
    this.put(begun);
    const answer = await call(begun.picture, { headers: { Accept: 'application/x-ndjson' } });
    for await (const line of eachLine(answer)) this.put(line as unknown as Shot);
  }

  private put(shot: Shot): void {
    // The picture before this one may still have had a word to say.
    if (shot.picture !== this.current) return;
    this.shot = shot;
    this.see();
    const quarters = Math.floor(shot.share * 4);
    if (shot.state === 'done') this.said = 'The picture is done.';
    else if (shot.state === 'stopped') this.said = shot.view ? 'Stopped. What has been drawn can be saved.' : 'Stopped.';
    else if (shot.state === 'preparing') this.said = 'Setting the scene.';
    else if (shot.state === 'drawing' && quarters > this.quarters) this.said = `${quarters * 25} percent drawn.`;
    this.quarters = Math.max(this.quarters, quarters);
  }

  private see(): void {
    const { shot, isWhole } = this;
    const address = shot?.view ? `${shot.picture}/view?whole=${isWhole}&view=${shot.view}` : '';
    if (address && address !== this.shown) this.looking.ask(() => this.fetch(address));
  }

  // Swapped in only when it is there: nothing flickers.
  private async fetch(address: string): Promise<void> {
    try {
      const bytes = await (await call(address)).blob();
      if (!this.shot || !address.startsWith(this.shot.picture)) return;
      URL.revokeObjectURL(this.look);
      this.look = URL.createObjectURL(bytes);
      this.shown = address;
    } catch (slip) {
      this.fail(slip);
    }
  }

  private shut(): void {
    URL.revokeObjectURL(this.look);
    this.look = '';
    this.shown = '';
    this.shot = null;
  }

  private fail(slip: unknown): void {
    this.problem = slip instanceof Problem ? slip : new Problem(0, 'The studio does not answer', 'The program behind this page has ended or is out of reach.');

    // Whoever draws it cannot be heard: nothing more will come.
    if (this.shot && this.isBusy && this.problem.status === 0) this.shot = { ...this.shot, state: 'failed', stage: '', reason: null };
  }
}
