import * as THREE from 'three';
import { Gem, type GemShared } from './gem';
import { Metal, type Mark, type MetalShared } from './metal';
import { lacks, type Packet, type PartMesh, type PoseName, type Role } from './packet';
import { between, pointOf, readPlacements, toMatrix, turnedAboutY, type Placement } from './placements';
import type { Room } from './room';

export const roles: Role[] = ['link', 'box', 'tongue', 'safety', 'pin'];

type Whole = Record<Role | 'stone', Placement[]>;

/** The piece in the scene: one instanced mesh a unique part, one for the stones, and the pose they stand in. */
export class Line {
  readonly group = new THREE.Group();
  packet: Packet | null = null;

  private readonly metals = new Map<Role, Metal>();
  private readonly parts = new Map<Role, THREE.InstancedMesh>();
  private readonly usual = new Map<Role, THREE.BufferGeometry>();
  private readonly closeUp = new Map<Role, THREE.BufferGeometry>();
  private isClose = false;
  private readonly shared: MetalShared & GemShared;
  private gem: Gem | null = null;
  private stones: THREE.InstancedMesh | null = null;
  private stoneKey = '';
  private pose: PoseName = 'wrist';
  private shown: Whole = empty();
  private way: { from: Whole; to: Whole; start: number; ms: number } | null = null;

  constructor(room: Room, private readonly changed: () => void) {
    this.shared = {
      cut: { value: new THREE.Vector4() },
      hasCut: { value: 0 },
      cutColour: { value: new THREE.Color('#b4472f') },
      room: room.sharp,
      softRoom: room.soft,
      metal: new THREE.Color(0.7, 0.68, 0.64),
    };
    for (const role of roles) this.metals.set(role, new Metal(this.shared));
  }

  /** How far the joint on show is turned, radians; above 0 round the wrist. */
  flex = 0;
  /** The bar's axis that it turns about, mm. */
  flexAxis = new THREE.Vector3();
  /** How far the tongue is drawn out, mm. */
  drawn = 0;

  /** Takes surfaces over; parts that the packet leaves out keep theirs. */
  take(packet: Packet, poseMs: number): void {
    if (packet.quality === 'close') {
      for (const mesh of packet.parts) this.closeUp.set(mesh.role, surface(mesh));
      this.dress();
      this.changed();
      return;
    }
    this.packet = packet;
    const metal = new THREE.Color(...packet.line.metal);
    this.shared.metal.copy(metal);
    for (const mesh of packet.parts) this.putPart(mesh);
    for (const role of roles) {
      if (lacks(packet, role)) this.drop(role);
      this.metals.get(role)!.colour = metal;
    }
    this.putStone(packet);
    this.place(poseMs);
  }

  /** Moves to another pose, in so many milliseconds. */
  show(pose: PoseName, ms: number): void {
    this.pose = pose;
    this.place(ms);
  }

  get poseName(): PoseName {
    return this.pose;
  }

  /** Puts every instance where it is now; true while it is on its way. */
  update(now: number): boolean {
    if (!this.way) return false;
    const share = Math.min(1, (now - this.way.start) / this.way.ms);
    const eased = share < 0.5 ? 4 * share ** 3 : 1 - (-2 * share + 2) ** 3 / 2;
    for (const key of keys) this.shown[key] = this.way.to[key].map((to, i) => (this.way!.from[key][i] ? between(this.way!.from[key][i], to, eased) : to));
    if (share >= 1) {
      this.shown = this.way.to;
      this.way = null;
    }
    this.write();
    return this.way !== null;
  }

  /** Puts the joint and the clasp as the scrubbers say. */
  scrub(): void {
    this.place(0);
  }

  useStill(isStill: boolean): void {
    if (this.stones && this.gem) this.stones.material = isStill ? this.gem.still : this.gem.moving;
  }

  section(plane: THREE.Vector4 | null): void {
    this.shared.hasCut.value = plane ? 1 : 0;
    if (plane) this.shared.cut.value.copy(plane);
    this.sideOfGem();
    this.changed();
  }

  /** True where a section has taken the place away. */
  isCutAway(point: THREE.Vector3): boolean {
    const { x, y, z, w } = this.shared.cut.value;
    return this.shared.hasCut.value > 0 && x * point.x + y * point.y + z * point.z > w;
  }

  private sideOfGem(): void {
    const side = this.shared.hasCut.value ? THREE.DoubleSide : THREE.FrontSide;
    for (const look of this.gem ? [this.gem.moving, this.gem.still] : []) look.side = side;
  }

  mark(marks: Partial<Record<Role, Mark[]>>): void {
    for (const role of roles) this.metals.get(role)!.mark(marks[role] ?? []);
    this.changed();
  }

  /** Where an instance stands at the end of any way. */
  placementOf(role: Role | 'stone', instance: number): Placement | undefined {
    return (this.way?.to ?? this.shown)[role][instance];
  }

  countOf(role: Role): number {
    return (this.way?.to ?? this.shown)[role].length;
  }

  /** A point of a part's frame in the world. */
  worldOf(role: Role | 'stone', instance: number, point: THREE.Vector3): THREE.Vector3 | null {
    const placement = this.placementOf(role, instance);
    return placement ? pointOf(placement, point) : null;
  }

  /** The box round everything on show. */
  bounds(): THREE.Box3 {
    const box = new THREE.Box3();
    const matrix = new THREE.Matrix4();
    const target = this.way?.to ?? this.shown;
    for (const [role, mesh] of [...this.parts.entries()]) {
      if (!mesh.geometry.boundingBox) mesh.geometry.computeBoundingBox();
      for (const placement of target[role]) box.union(mesh.geometry.boundingBox!.clone().applyMatrix4(toMatrix(placement, matrix)));
    }
    if (this.stones?.visible) {
      if (!this.stones.geometry.boundingBox) this.stones.geometry.computeBoundingBox();
      for (const placement of target.stone) box.union(this.stones.geometry.boundingBox!.clone().applyMatrix4(toMatrix(placement, matrix)));
    }
    return box;
  }

  /** Everything that a ray may hit. */
  targets(): THREE.InstancedMesh[] {
    return [...this.parts.values(), ...(this.stones?.visible ? [this.stones] : [])].filter(mesh => mesh.count > 0);
  }

  roleOf(mesh: THREE.Object3D): Role | 'stone' | null {
    if (mesh === this.stones) return 'stone';
    for (const [role, part] of this.parts) if (part === mesh) return role;
    return null;
  }

  triangles(): number {
    return this.targets().reduce((sum, mesh) => sum + mesh.count * ((mesh.geometry.index?.count ?? mesh.geometry.attributes.position.count) / 3), 0);
  }

  private putPart(mesh: PartMesh): void {
    const geometry = surface(mesh);
    const known = this.parts.get(mesh.role);
    if (known && known.instanceMatrix.count >= mesh.count) {
      this.forget(mesh.role);
      this.usual.set(mesh.role, geometry);
      known.geometry = geometry;
      return;
    }
    this.drop(mesh.role);
    this.usual.set(mesh.role, geometry);
    // Poses of a few parts may show more of one than the line has.
    const made = new THREE.InstancedMesh(geometry, this.metals.get(mesh.role)!.material, mesh.count + 8);
    made.frustumCulled = false;
    made.name = mesh.role;
    made.count = 0;
    this.parts.set(mesh.role, made);
    this.group.add(made);
  }

  private drop(role: Role): void {
    const known = this.parts.get(role);
    if (!known) return;
    this.group.remove(known);
    this.forget(role);
    known.dispose();
    this.parts.delete(role);
  }

  private forget(role: Role): void {
    for (const kept of [this.usual, this.closeUp]) {
      kept.get(role)?.dispose();
      kept.delete(role);
    }
  }

  /** Near by, the surface for a close look where there is one. */
  lookClosely(isClose: boolean): void {
    if (isClose === this.isClose) return;
    this.isClose = isClose;
    this.dress();
  }

  private dress(): void {
    // A line has many links but one clasp, which may always have all of its triangles.
    const isFew = this.countOf('link') <= fewLinks;
    for (const [role, mesh] of this.parts) {
      const isFine = this.isClose || isFew || (role !== 'link' && role !== 'pin');
      mesh.geometry = (isFine ? this.closeUp.get(role) : undefined) ?? this.usual.get(role)!;
    }
  }

  private putStone(packet: Packet): void {
    const count = packet.line.count + 8;
    const stone = packet.stone;
    const key = [stone.index, stone.dispersion, stone.tint, stone.diameterMm, stone.planes.length, count, Array.from(stone.planes.slice(0, 480))].join();
    if (key !== this.stoneKey) {
      this.stoneKey = key;
      const gem = (this.gem ??= new Gem(this.shared));
      if (this.stones) {
        this.group.remove(this.stones);
        this.stones.dispose();
      }
      gem.take(stone);
      this.sideOfGem();
      this.stones = new THREE.InstancedMesh(gem.geometry, gem.moving, count);
      this.stones.frustumCulled = false;
      this.stones.name = 'stone';
      this.group.add(this.stones);
    }
    // A casting has no stones in it yet.
    this.stones!.visible = packet.state === 'set';
  }

  private place(ms: number): void {
    const data = this.packet?.poses.get(this.pose) ?? this.packet?.poses.get('wrist');
    if (!data) return;
    const to = empty();
    for (const role of roles) to[role] = this.parts.has(role) ? readPlacements(data.parts[role]) : [];
    to.stone = readPlacements(data.stones);
    if (this.pose === 'joint') this.flexJoint(to);
    if (this.pose === 'clasp') for (const placement of to.tongue) placement.at.x += this.drawn;
    if (this.pose === 'clasp' && to.link[0]) {
      to.link[0].at.x += this.drawn;
      to.stone[0]?.at.setX(to.stone[0].at.x + this.drawn);
      if (to.pin[0]) to.pin[0].at.x += this.drawn;
    }
    const isSame = keys.every(key => this.shown[key].length === to[key].length);
    if (ms > 0 && isSame) {
      this.way = { from: this.shown, to, start: performance.now(), ms };
    } else {
      this.way = null;
      this.shown = to;
      this.write();
    }
    this.dress();
    this.changed();
  }

  // The second link, its stone and its pin turn about the bar.
  private flexJoint(to: Whole): void {
    const next = to.link[1];
    if (!next) return;
    to.link[1] = turnedAboutY(next, this.flexAxis, this.flex);
    if (to.stone[1]) to.stone[1] = turnedAboutY(to.stone[1], this.flexAxis, this.flex);
    if (to.pin[1]) to.pin[1] = turnedAboutY(to.pin[1], this.flexAxis, this.flex);
  }

  private write(): void {
    const matrix = new THREE.Matrix4();
    const put = (mesh: THREE.InstancedMesh, placements: Placement[]) => {
      mesh.count = Math.min(placements.length, mesh.instanceMatrix.count);
      for (let i = 0; i < mesh.count; i++) mesh.setMatrixAt(i, toMatrix(placements[i], matrix));
      mesh.instanceMatrix.needsUpdate = true;
      mesh.boundingSphere = null;
    };
    for (const [role, mesh] of this.parts) put(mesh, this.shown[role]);
    if (this.stones) put(this.stones, this.shown.stone);
  }
}

// Poses that show a few links show them near by.
const fewLinks = 6;

const keys: (Role | 'stone')[] = [...roles, 'stone'];

function surface(mesh: PartMesh): THREE.BufferGeometry {
  const geometry = new THREE.BufferGeometry();
  geometry.setAttribute('position', new THREE.BufferAttribute(mesh.positions, 3));
  geometry.setAttribute('normal', new THREE.BufferAttribute(mesh.normals, 3));
  geometry.setIndex(new THREE.BufferAttribute(mesh.triangles, 1));
  return geometry;
}

function empty(): Whole {
  return { link: [], box: [], tongue: [], safety: [], pin: [], stone: [] };
}
