import * as THREE from 'three';

/** A place that is marked on the metal: a patch of colour within a radius of a point, on one of the part's instances. */
export interface Mark {
  at: THREE.Vector3;
  radiusMm: number;
  /** Which instance, -1 for all. */
  instance: number;
  colour: THREE.Color;
}

export interface MetalShared {
  cut: { value: THREE.Vector4 };
  hasCut: { value: number };
  cutColour: { value: THREE.Color };
}

const mostMarks = 4;

/** Polished metal of one part, with its marks and its cut face. */
export class Metal {
  readonly material: THREE.MeshStandardMaterial;
  private readonly places = { value: Array.from({ length: mostMarks }, () => new THREE.Vector4(0, 0, 0, 0)) };
  private readonly colours = { value: Array.from({ length: mostMarks }, () => new THREE.Color()) };
  private readonly instances = { value: new Float32Array(mostMarks).fill(-2) };

  constructor(shared: MetalShared, environment: THREE.Texture) {
    this.material = new THREE.MeshStandardMaterial({ metalness: 1, roughness: 0.13, envMap: environment, side: THREE.DoubleSide });
    this.material.onBeforeCompile = shader => {
      Object.assign(shader.uniforms, { markPlaces: this.places, markColours: this.colours, markInstances: this.instances, ...shared });
      shader.vertexShader = shader.vertexShader
        .replace('#include <common>', '#include <common>\nvarying vec3 inPart; varying vec3 inWorld; flat varying float whichOne;')
        .replace(
          '#include <project_vertex>',
          `#include <project_vertex>
          inPart = position;
          whichOne = float(gl_InstanceID);
          inWorld = (modelMatrix * instanceMatrix * vec4(position, 1.0)).xyz;`,
        );
      shader.fragmentShader = shader.fragmentShader
        .replace(
          '#include <common>',
          `#include <common>
          varying vec3 inPart; varying vec3 inWorld; flat varying float whichOne;
          uniform vec4 markPlaces[${mostMarks}]; uniform vec3 markColours[${mostMarks}]; uniform float markInstances[${mostMarks}];
          uniform vec4 cut; uniform float hasCut; uniform vec3 cutColour;`,
        )
        .replace('#include <clipping_planes_fragment>', 'if (hasCut > 0.5 && dot(cut.xyz, inWorld) > cut.w) discard;')
        .replace(
          '#include <opaque_fragment>',
          `#include <opaque_fragment>
          for (int i = 0; i < ${mostMarks}; i++) {
            if (markInstances[i] > -1.5 && (markInstances[i] < -0.5 || abs(markInstances[i] - whichOne) < 0.5)) {
              float far = distance(inPart, markPlaces[i].xyz) / max(1e-4, markPlaces[i].w);
              float spot = 1.0 - smoothstep(0.62, 0.74, far);
              float ring = smoothstep(0.86, 0.9, far) * (1.0 - smoothstep(0.97, 1.0, far));
              vec3 tinted = markColours[i] * (0.35 + 0.9 * dot(gl_FragColor.rgb, vec3(0.333)));
              gl_FragColor.rgb = mix(gl_FragColor.rgb, tinted, max(spot * 0.86, ring));
            }
          }
          // Seen from inside, a closed body shows where it was cut.
          if (hasCut > 0.5 && !gl_FrontFacing) {
            float hatch = step(0.5, fract((inWorld.x + inWorld.y + inWorld.z) * 5.0));
            gl_FragColor.rgb = cutColour * (0.82 + 0.18 * hatch);
          }`,
        );
    };
  }

  set colour(colour: THREE.Color) {
    this.material.color.copy(colour);
  }

  mark(marks: Mark[]): void {
    for (let i = 0; i < mostMarks; i++) {
      const mark = marks[i];
      this.instances.value[i] = mark ? mark.instance : -2;
      if (mark) {
        this.places.value[i].set(mark.at.x, mark.at.y, mark.at.z, mark.radiusMm);
        this.colours.value[i].copy(mark.colour);
      }
    }
  }

  dispose(): void {
    this.material.dispose();
  }
}
