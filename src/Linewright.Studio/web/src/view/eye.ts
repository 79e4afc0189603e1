import * as THREE from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';

export type ViewName = 'front' | 'top' | 'side' | 'under' | 'corner' | 'desk' | 'hoop';

// Azimuth from the front towards the right, and height over the table, degrees.
const views: Record<ViewName, [number, number]> = {
  front: [0, 12],
  top: [0, 89.5],
  side: [90, 12],
  under: [18, -48],
  corner: [28, 36],
  desk: [0, 52],
  hoop: [26, 47],
};

/** Who looks: the camera, how a hand or keys move it, and flights from one look to another. */
export class Eye {
  readonly camera = new THREE.PerspectiveCamera(24, 1, 0.5, 2000);
  private readonly controls: OrbitControls;
  private flight: { fromAt: THREE.Vector3; fromTo: THREE.Vector3; toAt: THREE.Vector3; toTo: THREE.Vector3; start: number; ms: number } | null = null;

  constructor(element: HTMLElement, private readonly moved: () => void) {
    this.camera.up.set(0, 0, 1);
    this.camera.position.set(60, -120, 70);
    this.controls = new OrbitControls(this.camera, element);
    this.controls.enableDamping = false;
    this.controls.zoomToCursor = true;
    this.controls.rotateSpeed = 0.75;
    this.controls.minDistance = 2;
    this.controls.maxDistance = 900;
    this.controls.addEventListener('change', moved);
    this.controls.addEventListener('start', () => (this.flight = null));
  }

  get target(): THREE.Vector3 {
    return this.controls.target;
  }

  /** True while a flight goes on. */
  update(now: number): boolean {
    if (!this.flight) return false;
    const { fromAt, fromTo, toAt, toTo, start, ms } = this.flight;
    const share = ms <= 0 ? 1 : Math.min(1, (now - start) / ms);
    const eased = share < 0.5 ? 2 * share * share : 1 - (-2 * share + 2) ** 2 / 2;
    this.controls.target.lerpVectors(fromTo, toTo, eased);

    // Round the target, not through it: direction and distance apart.
    const [from, to] = [fromAt.clone().sub(fromTo), toAt.clone().sub(toTo)];
    const [a, b] = [new THREE.Spherical().setFromVector3(turned(from)), new THREE.Spherical().setFromVector3(turned(to))];
    let round = b.theta - a.theta;
    round -= Math.round(round / (2 * Math.PI)) * 2 * Math.PI;
    const mid = new THREE.Spherical(Math.exp(mix(Math.log(a.radius), Math.log(b.radius), eased)), mix(a.phi, b.phi, eased), a.theta + round * eased).makeSafe();
    this.camera.position.copy(back(new THREE.Vector3().setFromSpherical(mid))).add(this.controls.target);
    if (share >= 1) this.flight = null;
    this.controls.update();
    return this.flight !== null;
  }

  /** Goes to look at a box from a standard view, so that it fills the picture. */
  look(box: THREE.Box3, view: ViewName | null, ms: number, fill = 1): void {
    const middle = box.getCenter(new THREE.Vector3());
    const way = view ? direction(...views[view]) : this.camera.position.clone().sub(this.controls.target).normalize();
    this.fly(middle.clone().addScaledVector(way, this.distanceFor(box, way) / fill), middle, ms);
  }

  /** Goes near a point, from the side that it faces. */
  near(point: THREE.Vector3, facing: THREE.Vector3, distance: number, ms: number): void {
    const way = facing.clone().normalize();
    this.fly(point.clone().addScaledVector(way, distance), point, ms);
  }

  /** Turns by degrees, and moves nearer by a factor. */
  nudge(azimuthDeg: number, heightDeg: number, nearer: number): void {
    const way = turned(this.camera.position.clone().sub(this.controls.target));
    const round = new THREE.Spherical().setFromVector3(way);
    round.theta += THREE.MathUtils.degToRad(azimuthDeg);
    round.phi = THREE.MathUtils.clamp(round.phi - THREE.MathUtils.degToRad(heightDeg), 0.02, Math.PI - 0.02);
    round.radius /= nearer;
    this.flight = null;
    this.camera.position.copy(back(new THREE.Vector3().setFromSpherical(round))).add(this.controls.target);
    this.controls.update();
    this.moved();
  }

  shape(aspect: number): void {
    this.camera.aspect = aspect;
    this.camera.updateProjectionMatrix();
  }

  private fly(toAt: THREE.Vector3, toTo: THREE.Vector3, ms: number): void {
    this.flight = { fromAt: this.camera.position.clone(), fromTo: this.controls.target.clone(), toAt, toTo, start: performance.now(), ms };
    this.moved();
  }

  // Every corner of the box must lie within the picture.
  private distanceFor(box: THREE.Box3, way: THREE.Vector3): number {
    const middle = box.getCenter(new THREE.Vector3());
    const right = new THREE.Vector3().crossVectors(this.camera.up, way).normalize();
    const up = new THREE.Vector3().crossVectors(way, right);
    const half = Math.tan(THREE.MathUtils.degToRad(this.camera.fov / 2)) * 0.86;
    let distance = 4;
    for (let corner = 0; corner < 8; corner++) {
      const at = new THREE.Vector3(corner & 1 ? box.max.x : box.min.x, corner & 2 ? box.max.y : box.min.y, corner & 4 ? box.max.z : box.min.z).sub(middle);
      distance = Math.max(distance, Math.abs(at.dot(up)) / half + at.dot(way), Math.abs(at.dot(right)) / (half * this.camera.aspect) + at.dot(way));
    }
    return distance;
  }
}

function direction(azimuthDeg: number, heightDeg: number): THREE.Vector3 {
  const [azimuth, height] = [THREE.MathUtils.degToRad(azimuthDeg), THREE.MathUtils.degToRad(heightDeg)];
  return new THREE.Vector3(Math.cos(height) * Math.sin(azimuth), -Math.cos(height) * Math.cos(azimuth), Math.sin(height));
}

// Spherical coordinates there have y for the pole, here z.
const turned = (v: THREE.Vector3) => new THREE.Vector3(v.x, v.z, -v.y);
const back = (v: THREE.Vector3) => new THREE.Vector3(v.x, -v.z, v.y);
const mix = (a: number, b: number, share: number) => a + (b - a) * share;
