import * as THREE from 'three';
import type { LengthUnit } from '../model/units';
import { length } from '../model/units';
import type { LineData, PoseName } from './packet';
import type { Stage } from './stage';

/** A label over the picture, with the lines that lead to it, in CSS pixels of the canvas. */
export interface Label {
  key: string;
  text: string;
  kind: 'plain' | 'fail' | 'caution' | 'pass' | 'other';
  x: number;
  y: number;
  lines: { x1: number; y1: number; x2: number; y2: number }[];
}

/** A measured way in the world. */
export interface Dimension {
  key: string;
  from: THREE.Vector3;
  to: THREE.Vector3;
  text: string;
  /** The same way moved aside, so that the label does not cover what it measures. */
  aside?: THREE.Vector3;
}

/** The line's own dimensions in a pose, in the trade's words. */
export function lineDimensions(stage: Stage, pose: PoseName, line: LineData, insideMm: number, unit: LengthUnit): Dimension[] {
  const at = (link: number, x: number, y: number, z: number) => stage.line.worldOf('link', link, new THREE.Vector3(x, y, z));
  const across = new THREE.Vector3(0, -1, 0);
  const dimensions: Dimension[] = [];
  const add = (key: string, from: THREE.Vector3 | null, to: THREE.Vector3 | null, text: string, aside?: THREE.Vector3) => {
    if (from && to) dimensions.push({ key, from, to, text, aside });
  };
  const whole = pose === 'flat';
  const half = line.pitchMm / 2;
  const h = line.hingeHeightMm;
  if (whole) {
    const first = at(0, -half, 0, h);
    const box = stage.line.worldOf('box', 0, new THREE.Vector3(line.claspMm, 0, h));
    add('length', first, box, `laid flat ${length(line.count * line.pitchMm + line.claspMm, unit, 2)}`, across.clone().multiplyScalar(9));
    add('clasp', stage.line.worldOf('box', 0, new THREE.Vector3(0, 0, h)), box, `clasp ${length(line.claspMm, unit)}`, across.clone().multiplyScalar(5));
  }
  if (pose === 'wrist' || pose === 'round') {
    const box = stage.line.bounds();
    const inside = new THREE.Vector3(box.min.x + line.tableMm, 0, 0);
    add('inside', inside, inside.clone().setX(box.max.x - line.tableMm), `inside circumference ${length(insideMm, unit, 1)}`);
  }
  if (pose === 'joint' || whole) {
    const link = whole ? Math.floor(line.count / 2) : 0;
    add('pitch', at(link, 0, 0, line.tableMm), at(link + 1, 0, 0, line.tableMm), `pitch ${length(line.pitchMm, unit, 3)}`, new THREE.Vector3(0, 0, 2));
  }
  if (pose === 'link' || pose === 'joint' || whole) {
    const link = whole ? Math.floor(line.count / 4) : 0;
    const high = whole ? Math.floor((3 * line.count) / 4) : 0;
    add('width', at(link, 0, -line.widthMm / 2, 0), at(link, 0, line.widthMm / 2, 0), `width ${length(line.widthMm, unit)}`, new THREE.Vector3(whole ? 0 : -line.pitchMm, 0, whole ? 4 : 0));
    add('height', at(high, -half, -line.widthMm / 2, 0), at(high, -half, -line.widthMm / 2, line.tableMm), `height ${length(line.tableMm, unit)}`, across.clone().multiplyScalar(1.5));
  }
  if (pose === 'clasp') {
    const point = (x: number, y: number, z: number) => stage.line.worldOf('box', 0, new THREE.Vector3(x, y, z));
    add('clasp', point(0, -line.claspWidthMm / 2, 0), point(line.claspMm, -line.claspWidthMm / 2, 0), `clasp ${length(line.claspMm, unit)}`, across.clone().multiplyScalar(2.5));
    add('claspWidth', point(line.claspMm / 2, -line.claspWidthMm / 2, 0), point(line.claspMm / 2, line.claspWidthMm / 2, 0), `width ${length(line.claspWidthMm, unit)}`, new THREE.Vector3(0, 0, -2));
    add('claspHeight', point(2, -line.claspWidthMm / 2, 0), point(2, -line.claspWidthMm / 2, line.claspHeightMm), `height ${length(line.claspHeightMm, unit)}`);
  }
  return dimensions;
}

/** Dimensions as labels where they are seen now. */
export function draw(stage: Stage, dimensions: Dimension[]): Label[] {
  return dimensions.flatMap(dimension => {
    const aside = dimension.aside ?? new THREE.Vector3();
    const [from, to] = [stage.project(dimension.from.clone().add(aside)), stage.project(dimension.to.clone().add(aside))];
    const [footFrom, footTo] = [stage.project(dimension.from), stage.project(dimension.to)];
    if (!from || !to || !footFrom || !footTo) return [];
    const lines = [{ x1: from.x, y1: from.y, x2: to.x, y2: to.y }];
    if (dimension.aside) lines.push({ x1: footFrom.x, y1: footFrom.y, x2: from.x, y2: from.y }, { x1: footTo.x, y1: footTo.y, x2: to.x, y2: to.y });
    return [{ key: dimension.key, text: dimension.text, kind: 'plain' as const, x: (from.x + to.x) / 2, y: (from.y + to.y) / 2, lines }];
  });
}

// About what a label takes up: its type is not measured for every frame. Assumed: the widest usual letters of 13 pixels.
const letterPx = 7.2;
const paddingPx = 12;
const highPx = 22;

/** The labels moved so that none covers another or leaves the picture; what was moved is led back by a line. */
export function apart(labels: Label[], widthPx: number): Label[] {
  const placed: (Label & { wide: number })[] = [];
  for (const label of labels) {
    const wide = label.text.length * letterPx + paddingPx;
    const x = Math.max(wide / 2, Math.min(widthPx - wide / 2, label.x));
    let y = label.y;
    const covered = () => placed.find(other => Math.abs(other.x - x) < (other.wide + wide) / 2 && Math.abs(other.y - y) < highPx);
    for (let other = covered(); other; other = covered()) y = other.y + highPx;
    placed.push({ ...label, x, y, wide, lines: y === label.y ? label.lines : [...label.lines, { x1: label.x, y1: label.y, x2: x, y2: y }] });
  }
  return placed;
}

/** A note beside a point, led to it by a line. */
export function pin(stage: Stage, key: string, at: THREE.Vector3, text: string, kind: Label['kind'], lift = -54): Label[] {
  const point = stage.project(at);
  return point ? [{ key, text, kind, x: point.x + 46, y: point.y + lift, lines: [{ x1: point.x, y1: point.y, x2: point.x + 46, y2: point.y + lift }] }] : [];
}
