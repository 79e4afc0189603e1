import * as THREE from 'three';
import { gemFragment, gemVertex } from './gemShader';
import type { StoneData } from './packet';

export interface GemShared {
  room: THREE.CubeTexture;
  metal: THREE.Color;
  cut: { value: THREE.Vector4 };
  hasCut: { value: number };
}

/**
 * The stone's two looks: quick while the view moves, all bounces and dispersion once it stands still.
 * Another stone changes what the looks read, never the looks: a card takes long to compile them.
 */
export class Gem {
  readonly moving: THREE.ShaderMaterial;
  readonly still: THREE.ShaderMaterial;
  geometry = new THREE.BufferGeometry();
  private readonly uniforms;

  constructor(shared: GemShared) {
    this.uniforms = {
      facets: { value: null as THREE.DataTexture | null },
      facetCount: { value: 0 },
      girdle: { value: new THREE.Vector4() },
      room: { value: shared.room },
      roomLight: { value: 1 },
      index: { value: 1 },
      spread: { value: 0 },
      absorbed: { value: new THREE.Vector3() },
      metal: { value: shared.metal },
      cut: shared.cut,
      hasCut: shared.hasCut,
    };
    const look = (bounces: number, spectral: number) =>
      new THREE.ShaderMaterial({
        glslVersion: THREE.GLSL3,
        defines: { BOUNCES: bounces, SPECTRAL: spectral },
        uniforms: this.uniforms,
        vertexShader: gemVertex,
        fragmentShader: gemFragment,
      });
    this.moving = look(5, 0);
    this.still = look(8, 1);
  }

  /** Becomes another stone. */
  take(stone: StoneData): void {
    const { facets, count, girdle } = sortFacets(stone.planes);
    this.uniforms.facets.value?.dispose();
    this.uniforms.facets.value = facets;
    this.uniforms.facetCount.value = count;
    this.uniforms.girdle.value.copy(girdle);
    this.uniforms.index.value = stone.index;
    // Dispersion is quoted between 430.8 and 686.7 nm; the screen's blue and red lie a little closer together.
    this.uniforms.spread.value = stone.dispersion * 0.85;
    this.uniforms.absorbed.value.set(...(stone.tint.map(left => -Math.log(left)) as [number, number, number]));
    this.geometry.dispose();
    this.geometry = new THREE.BufferGeometry();
    this.geometry.setAttribute('position', new THREE.BufferAttribute(stone.positions, 3));
    this.geometry.setAttribute('normal', new THREE.BufferAttribute(stone.normals, 3));
  }
}

// The girdle's flats are a regular prism where they all stand upright, equally far out and evenly round.
function sortFacets(planes: Float32Array): { facets: THREE.DataTexture; count: number; girdle: THREE.Vector4 } {
  const upright: number[][] = [];
  const sloped: number[] = [];
  for (let i = 0; i < planes.length; i += 4) {
    const plane = Array.from(planes.subarray(i, i + 4));
    if (Math.abs(plane[2]) < 1e-5) upright.push(plane);
    else sloped.push(...plane);
  }

  const part = (2 * Math.PI) / Math.max(1, upright.length);
  const first = upright.length ? Math.atan2(upright[0][1], upright[0][0]) : 0;
  const isPrism =
    upright.length >= 8 &&
    upright.every(([x, y, , d]) => {
      const steps = (Math.atan2(y, x) - first) / part;
      return Math.abs(steps - Math.round(steps)) < 1e-3 && Math.abs(d - upright[0][3]) < 1e-4;
    });
  if (!isPrism) sloped.push(...upright.flat());
  const count = sloped.length / 4;
  const facets = new THREE.DataTexture(new Float32Array(sloped), count, 1, THREE.RGBAFormat, THREE.FloatType);
  facets.needsUpdate = true;
  return { facets, count, girdle: new THREE.Vector4(isPrism ? upright.length : 0, isPrism ? upright[0][3] : 1, first, 0) };
}
