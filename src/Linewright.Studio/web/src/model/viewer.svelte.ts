import * as THREE from 'three';
import type { Finding, Flex, Spot } from './api';
import { calm, prefs } from './prefs.svelte';
import { measure as measured, length } from './units';
import type { ViewName } from '../view/eye';
import { apart, draw, lineDimensions, pin, type Dimension, type Label } from '../view/labels';
import type { Mark } from '../view/metal';
import { decode, type Packet, type PoseName, type Role } from '../view/packet';
import { Stage } from '../view/stage';

export interface Section {
  axis: 'x' | 'y' | 'z';
  share: number;
}

const wholeLine: PoseName[] = ['flat', 'wrist', 'round', 'open'];
const colours = { fail: new THREE.Color('#e0301e'), caution: new THREE.Color('#e89b1a'), pass: new THREE.Color('#2f9e6a') };
const other = new THREE.Color('#2a7fd4');

/** What is on show and how: pose, section, marks, measured ways. The stage does the drawing. */
export class Viewer {
  pose = $state<PoseName>('wrist');
  angleDeg = $state(0);
  drawnMm = $state(0);
  strokeMm = $state(8);
  section = $state<Section | null>(null);
  isMeasuring = $state(false);
  labels = $state.raw<Label[]>([]);
  stage: Stage | null = null;

  /** Inside circumference, for its label. */
  insideMm = $state(0);
  private picked: THREE.Vector3[] = [];
  private notes: { at: () => THREE.Vector3 | null; text: string; kind: Label['kind']; lift: number }[] = [];
  private hasLooked = false;
  private state: Packet['state'] = 'set';

  begin(canvas: HTMLCanvasElement): Stage {
    this.stage = new Stage(canvas);
    this.stage.light = prefs.theme;
    this.stage.onFrame = () => this.relabel();
    return this.stage;
  }

  take(bytes: ArrayBuffer): Packet {
    if (!this.stage) return decode(bytes);
    const packet = this.stage.take(bytes, 0);
    this.strokeMm = packet.line.strokeMm;
    if (this.drawnMm > this.strokeMm) this.draw(this.strokeMm);

    // Points that were picked lay on the surfaces as they were.
    if (packet.quality === 'moving' || packet.state !== this.state) this.picked = [];
    this.state = packet.state;
    if (!this.hasLooked) {
      this.hasLooked = true;
      this.look('hoop', 0);
    }
    if (this.section) this.cut(this.section);
    return packet;
  }

  feel(flex: Flex | null): void {
    if (!flex || !this.stage) return;
    this.stage.line.flexAxis.set(...flex.axis_mm);
    this.turn(Math.max(-flex.outward.deg, Math.min(flex.inward.deg, this.angleDeg)));
  }

  /** Shows a pose and goes to look at it. */
  choose(pose: PoseName, looks = true): void {
    const isBend = wholeLine.includes(pose) && wholeLine.includes(this.pose);
    this.pose = pose;
    this.picked = [];
    this.stage?.line.show(pose, isBend && !calm() ? 900 : 0);
    if (looks) this.look(pose === 'flat' ? 'desk' : wholeLine.includes(pose) ? 'hoop' : 'corner', isBend ? 900 : 500);
    if (this.section) this.cut(this.section);
  }

  look(view: ViewName | null, ms = 500): void {
    const stage = this.stage;
    if (!stage) return;
    stage.eye.look(stage.line.bounds(), view, calm() ? 0 : ms);
  }

  /** Looks at one link of the whole line. */
  goToLink(link: number): void {
    if (!wholeLine.includes(this.pose)) this.choose('flat', false);
    const placement = this.stage?.line.placementOf('link', link);
    if (!placement) return;
    const facing = new THREE.Vector3(0.1, -0.8, 0.75).applyQuaternion(placement.turn);
    this.stage!.eye.near(this.stage!.line.worldOf('link', link, new THREE.Vector3(0, 0, 1.5))!, facing, 42, calm() ? 0 : 600);
  }

  turn(deg: number): void {
    this.angleDeg = deg;
    if (!this.stage) return;
    this.stage.line.flex = THREE.MathUtils.degToRad(deg);
    if (this.pose === 'joint') this.scrub();
  }

  draw(mm: number): void {
    this.drawnMm = mm;
    if (!this.stage) return;
    this.stage.line.drawn = mm;
    if (this.pose === 'clasp') this.scrub();
  }

  // What moves takes the points along that were picked on it; the hand picks them again.
  private scrub(): void {
    this.picked = [];
    this.stage!.line.scrub();
  }

  cut(section: Section | null): void {
    this.section = section;
    const line = this.stage?.line;
    if (!line) return;
    if (!section) {
      line.section(null);
      return;
    }
    const box = line.bounds();
    const at = box.min[section.axis] + (box.max[section.axis] - box.min[section.axis]) * section.share;

    // What lies nearer to the usual eye goes: the front, the right, the top.
    const sign = section.axis === 'y' ? -1 : 1;
    const plane = new THREE.Vector4(0, 0, 0, sign * at);
    plane[section.axis] = sign;
    line.section(plane);
  }

  /** Takes a point for measuring; the third begins anew. */
  pickAt(x: number, y: number): void {
    if (!this.isMeasuring || !this.stage) return;
    const hit = this.stage.pick(x, y);
    if (!hit) return;
    if (this.picked.length >= 2) this.picked = [];
    this.picked.push(hit.point.clone());
    this.stage.invalidate();
  }

  setMeasuring(on: boolean): void {
    this.isMeasuring = on;
    this.picked = [];
    this.stage?.invalidate();
  }

  /** Marks a finding on the metal and flies there, unless the eye shall stay where it is; null takes the marks away. */
  mark(finding: Finding | null, spots: Spot[], flies = true): void {
    const stage = this.stage;
    this.notes = [];
    if (!stage) return;
    if (!finding || spots.length === 0) {
      stage.line.mark({});
      stage.invalidate();
      if (finding && flies) this.choose(finding.rule.startsWith('clasp') ? 'clasp' : 'wrist');
      return;
    }
    const isPair = spots.length > 1;
    const role = spots[0].role;
    if (!flies) stage.invalidate();
    else if (isPair) this.choose('joint', false);
    else if (role !== 'link' && role !== 'pin') this.choose('clasp', false);
    else if (!wholeLine.includes(this.pose) && this.pose !== 'link') this.choose('link', false);
    if (isPair && flies) this.turnToLimit(finding);

    // In a whole line the topmost link, which faces the eye.
    const instance = wholeLine.includes(this.pose) && role === 'link' ? Math.floor(stage.line.countOf('link') / 2) : 0;
    const marks: Partial<Record<Role, Mark[]>> = {};
    spots.forEach((spot, index) => {
      const which = spot.next ? 1 : isPair ? 0 : instance;
      const at = new THREE.Vector3(...spot.at_mm);
      const colour = index === 0 ? colours[finding.verdict] : other;
      if (!spot.stone) (marks[spot.role] ??= []).push({ at, radiusMm: isPair ? 0.22 : 0.42, instance: which, colour });
      const where = () => (spot.stone ? this.stage!.line.worldOf('link', which, at) : this.stage!.line.worldOf(spot.role, which, at));
      const text = index === 0 ? this.noteFor(finding) : 'meets here';
      this.notes.push({ at: where, text, kind: index === 0 ? finding.verdict : 'other', lift: index === 0 ? -58 : 52 });
    });
    stage.line.mark(marks);
    if (flies) this.flyTo(spots[0], isPair ? 0 : instance);
  }

  private turnToLimit(finding: Finding): void {
    if (finding.unit !== 'deg' || finding.measured === null) return;
    if (finding.rule === 'flex-inward') this.turn(finding.measured);
    if (finding.rule === 'flex-outward') this.turn(-finding.measured);
  }

  private noteFor(finding: Finding): string {
    const rule = finding.rule.replaceAll('-', ' ');
    return finding.measured === null ? rule : `${rule} ${measured(finding.measured, finding.unit, prefs.unit)}`;
  }

  // From the side on which the place lies on its part, a little from above.
  private flyTo(spot: Spot, instance: number): void {
    const stage = this.stage!;
    const placement = stage.line.placementOf(spot.role, spot.next ? 1 : instance);
    if (!placement) return;
    const at = new THREE.Vector3(...spot.at_mm);
    const point = stage.line.worldOf(spot.role, spot.next ? 1 : instance, at)!;
    const isClasp = spot.role === 'box' || spot.role === 'tongue' || spot.role === 'safety';
    const facing = isClasp ? new THREE.Vector3(0.25, at.y > 0.1 ? 1 : -1, 0.8) : new THREE.Vector3(at.x * 0.35, at.y === 0 ? -1 : Math.sign(at.y) * Math.max(1, Math.abs(at.y)), Math.max(0.35, at.z * 0.55));
    stage.eye.near(point, facing.applyQuaternion(placement.turn), isClasp ? 34 : 17, calm() ? 0 : 700);
  }

  private relabel(): void {
    const stage = this.stage!;
    const packet = stage.line.packet;
    const dimensions: Dimension[] = prefs.showsDimensions && packet ? lineDimensions(stage, this.pose, packet.line, this.insideMm, prefs.unit) : [];
    if (this.picked.length === 2) {
      const [from, to] = this.picked;
      const way = to.clone().sub(from);
      const parts = [way.x, way.y, way.z].map(part => length(Math.abs(part), prefs.unit, 3).replace(/ (mm|in)$/, ''));
      dimensions.push({ key: 'picked', from, to, text: `${length(way.length(), prefs.unit, 3)} (${parts.join(', ')})` });
    }
    const labels = draw(stage, dimensions);
    this.picked.forEach((point, index) => this.picked.length < 2 && labels.push(...pin(stage, `picked-${index}`, point, 'from here', 'plain')));
    this.notes.forEach((note, index) => {
      const at = note.at();
      if (at) labels.push(...pin(stage, `note-${index}`, at, note.text, note.kind, note.lift));
    });
    if (labels.length || this.labels.length) this.labels = apart(labels, stage.widthPx);
  }
}
