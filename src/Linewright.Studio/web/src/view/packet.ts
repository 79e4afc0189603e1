/** The server's block of bytes, cut into arrays without a copy. Its layout is described where it is packed. */

export type Role = 'link' | 'box' | 'tongue' | 'safety' | 'pin';
export type PoseName = 'flat' | 'wrist' | 'round' | 'open' | 'link' | 'joint' | 'clasp' | 'apart';

export interface PartMesh {
  name: string;
  role: Role;
  count: number;
  volumeMm3: number;
  positions: Float32Array;
  normals: Float32Array;
  triangles: Uint32Array;
}

export interface StoneData {
  diameterMm: number;
  girdleHeightMm: number;
  index: number;
  dispersion: number;
  tint: [number, number, number];
  planes: Float32Array;
  positions: Float32Array;
  normals: Float32Array;
}

/** Twelve numbers a placement: the images of x, y, z and the origin. */
export interface PoseData {
  parts: Partial<Record<Role, Float32Array>>;
  stones: Float32Array;
}

export interface LineData {
  count: number;
  pitchMm: number;
  claspMm: number;
  hingeHeightMm: number;
  playMm: number;
  widthMm: number;
  claspWidthMm: number;
  claspHeightMm: number;
  tableMm: number;
  strokeMm: number;
  metal: [number, number, number];
}

export interface Packet {
  quality: 'still' | 'moving' | 'close';
  state: 'set' | 'cast';
  parts: PartMesh[];
  stone: StoneData;
  poses: Map<PoseName, PoseData>;
  line: LineData;
}

/** True where the piece has no such part. */
export const lacks = (packet: Packet, role: Role) => !packet.poses.get('flat')?.parts[role]?.length && !packet.poses.get('clasp')?.parts[role]?.length;

type Place = [number, number];

const mark = 0x314d574c; // LWM1

export function decode(bytes: ArrayBuffer): Packet {
  const view = new DataView(bytes);
  if (view.getUint32(0, true) !== mark) throw new Error('The answer is no mesh packet');
  const length = view.getUint32(4, true);
  const header = JSON.parse(new TextDecoder().decode(new Uint8Array(bytes, 8, length)));
  const start = 8 + length;
  const floats = ([at, count]: Place) => new Float32Array(bytes, start + at * 4, count);
  const indices = ([at, count]: Place) => new Uint32Array(bytes, start + at * 4, count);
  return {
    ...header,
    parts: header.parts.map((part: PartMesh & Record<'positions' | 'normals' | 'triangles', Place>) => ({
      ...part,
      positions: floats(part.positions),
      normals: floats(part.normals),
      triangles: indices(part.triangles),
    })),
    stone: {
      ...header.stone,
      planes: floats(header.stone.planes),
      positions: floats(header.stone.positions),
      normals: floats(header.stone.normals),
    },
    poses: new Map(
      header.poses.map((pose: { name: PoseName; parts: Record<Role, Place>; stones: Place }) => [
        pose.name,
        {
          parts: Object.fromEntries(Object.entries(pose.parts).map(([role, place]) => [role, floats(place)])),
          stones: floats(pose.stones),
        },
      ]),
    ),
  };
}
