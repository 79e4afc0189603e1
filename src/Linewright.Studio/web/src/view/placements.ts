import * as THREE from 'three';

/** Rigid placements of one part: where each instance lies, and ways between two sets of them. */
export interface Placement {
  at: THREE.Vector3;
  turn: THREE.Quaternion;
}

export function readPlacements(numbers: Float32Array | undefined): Placement[] {
  const placements: Placement[] = [];
  for (let i = 0; numbers && i + 12 <= numbers.length; i += 12) {
    const [ax, ay, az, bx, by, bz, cx, cy, cz, x, y, z] = numbers.subarray(i, i + 12);
    const turn = new THREE.Matrix4().set(ax, bx, cx, 0, ay, by, cy, 0, az, bz, cz, 0, 0, 0, 0, 1);
    placements.push({ at: new THREE.Vector3(x, y, z), turn: new THREE.Quaternion().setFromRotationMatrix(turn) });
  }

  return placements;
}

export function toMatrix(placement: Placement, target: THREE.Matrix4): THREE.Matrix4 {
  return target.compose(placement.at, placement.turn, one);
}

/** A share of the way from one placement to another. */
export function between(from: Placement, to: Placement, share: number): Placement {
  return { at: from.at.clone().lerp(to.at, share), turn: from.turn.clone().slerp(to.turn, share) };
}

/** The placement turned about an axis along y through a point, radians; the sense in which a line bends round a wrist is above 0. */
export function turnedAboutY(placement: Placement, axis: THREE.Vector3, angle: number): Placement {
  const turn = new THREE.Quaternion().setFromAxisAngle(alongY, angle);
  return { at: placement.at.clone().sub(axis).applyQuaternion(turn).add(axis), turn: turn.multiply(placement.turn) };
}

/** The point of a part's own frame in the outer one. */
export function pointOf(placement: Placement, point: THREE.Vector3): THREE.Vector3 {
  return point.clone().applyQuaternion(placement.turn).add(placement.at);
}

const one = new THREE.Vector3(1, 1, 1);
const alongY = new THREE.Vector3(0, 1, 0);
