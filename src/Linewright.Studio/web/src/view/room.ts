import * as THREE from 'three';

/**
 * The room that metal and stones mirror: a dark floor, a soft ceiling, large boxes of light for the metal, many small
 * lamps for the stones, and black flags that give polished faces their dark lines. All drawn, nothing loaded. z is up.
 */
export interface Room {
  /** For metal: with faces of light at eye level. */
  soft: THREE.CubeTexture;
  /** For stones. */
  sharp: THREE.CubeTexture;
}

interface Card {
  azimuthDeg: number;
  heightDeg: number;
  width: number;
  height: number;
  light: number;
  tint?: number;
}

const soft: Card[] = [
  { azimuthDeg: -62, heightDeg: 64, width: 15, height: 8, light: 7.5, tint: 0xfffaf2 },
  { azimuthDeg: -150, heightDeg: 32, width: 4, height: 17, light: 6, tint: 0xf2f6ff },
  { azimuthDeg: 0, heightDeg: 26, width: 4, height: 15, light: 5, tint: 0xfff2e2 },
  { azimuthDeg: 92, heightDeg: 30, width: 22, height: 4, light: 4.5 },
  { azimuthDeg: 122, heightDeg: 58, width: 5, height: 5, light: 9 },
  { azimuthDeg: 48, heightDeg: 62, width: 3.5, height: 3.5, light: 12, tint: 0xf4f8ff },
  { azimuthDeg: -112, heightDeg: 40, width: 2.4, height: 2.4, light: 13 },
  { azimuthDeg: -80, heightDeg: -6, width: 16, height: 1.1, light: 1.6 },
];

const flags: Card[] = [
  { azimuthDeg: -104, heightDeg: 14, width: 15, height: 2.6, light: 0.015 },
  { azimuthDeg: -38, heightDeg: 48, width: 2.4, height: 12, light: 0.02 },
  { azimuthDeg: -196, heightDeg: 52, width: 2.6, height: 12, light: 0.02 },
  { azimuthDeg: 26, heightDeg: 54, width: 2.2, height: 9, light: 0.02 },
  { azimuthDeg: -78, heightDeg: 82, width: 2.2, height: 10, light: 0.03 },
];

// For metal only: broad faces of light at eye level, so that upright polished walls do not go black.
const fill: Card[] = [
  { azimuthDeg: -84, heightDeg: 10, width: 26, height: 5, light: 1.35 },
  { azimuthDeg: -10, heightDeg: 6, width: 12, height: 9, light: 0.95 },
  { azimuthDeg: -165, heightDeg: 8, width: 12, height: 9, light: 1.05 },
  { azimuthDeg: 90, heightDeg: 4, width: 26, height: 6, light: 0.9 },
  { azimuthDeg: -90, heightDeg: -36, width: 30, height: 7, light: 0.5 },
];

const lamps = 54;

export function buildRoom(renderer: THREE.WebGLRenderer, size: number): Room {
  const mapping = renderer.toneMapping;
  renderer.toneMapping = THREE.NoToneMapping;
  const sharp = photograph(renderer, size, false);
  const broad = photograph(renderer, size / 2, true);
  renderer.toneMapping = mapping;
  return { soft: broad.texture, sharp: sharp.texture };
}

// The room as seen from the piece, all round.
function photograph(renderer: THREE.WebGLRenderer, size: number, isForMetal: boolean): THREE.WebGLCubeRenderTarget {
  const scene = new THREE.Scene();
  scene.add(walls(isForMetal));
  for (const box of isForMetal ? [...soft, ...fill] : soft) scene.add(card(box, 20));
  for (const flag of flags) scene.add(card(flag, 18));

  // Small lamps in a scatter that is the same every time. Source: Park and Miller (1988), the minimal standard generator.
  let state = 11;
  const next = () => (state = (state * 16807) % 2147483647) / 2147483647;
  for (let i = 0; i < lamps; i++) {
    const size = 0.5 + next() * 0.55;
    scene.add(card({ azimuthDeg: next() * 360, heightDeg: 16 + next() * 70, width: size, height: size, light: 27, tint: [0xffffff, 0xfff0dc, 0xe8f0ff][i % 3] }, 19));
  }

  const target = new THREE.WebGLCubeRenderTarget(size, { type: THREE.HalfFloatType, generateMipmaps: true, minFilter: THREE.LinearMipmapLinearFilter });
  const camera = new THREE.CubeCamera(0.1, 100, target);
  camera.update(renderer, scene);
  scene.traverse(thing => {
    if (thing instanceof THREE.Mesh) {
      thing.geometry.dispose();
      (thing.material as THREE.Material).dispose();
    }
  });
  return target;
}

function walls(isForMetal: boolean): THREE.Mesh {
  return new THREE.Mesh(
    new THREE.SphereGeometry(50, 48, 32),
    new THREE.ShaderMaterial({
      side: THREE.BackSide,
      depthWrite: false,
      vertexShader: 'varying vec3 toWall; void main() { toWall = position; gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
      fragmentShader: `
        varying vec3 toWall;
        void main() {
          float up = normalize(toWall).z;
          vec3 floorTone = ${isForMetal ? 'vec3(0.19, 0.184, 0.176)' : 'vec3(0.085, 0.08, 0.075)'}, horizon = ${isForMetal ? 'vec3(0.34, 0.334, 0.327)' : 'vec3(0.20, 0.195, 0.19)'}, ceiling = vec3(0.60, 0.61, 0.64);
          vec3 tone = up < 0.0 ? mix(horizon, floorTone, smoothstep(0.0, -0.4, up)) : mix(horizon, ceiling, smoothstep(0.0, 0.95, up));
          gl_FragColor = vec4(tone, 1.0);
        }`,
    }),
  );
}

function card(what: Card, distance: number): THREE.Mesh {
  const azimuth = THREE.MathUtils.degToRad(what.azimuthDeg);
  const height = THREE.MathUtils.degToRad(what.heightDeg);
  const mesh = new THREE.Mesh(
    new THREE.PlaneGeometry(what.width, what.height),
    new THREE.MeshBasicMaterial({ color: new THREE.Color(what.tint ?? 0xffffff).multiplyScalar(what.light), side: THREE.DoubleSide }),
  );
  mesh.up.set(0, 0, 1);
  mesh.position.set(distance * Math.cos(height) * Math.cos(azimuth), distance * Math.cos(height) * Math.sin(azimuth), distance * Math.sin(height));
  mesh.lookAt(0, 0, 0);
  return mesh;
}
