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
  softRoom: THREE.CubeTexture;
  cut: { value: THREE.Vector4 };
  hasCut: { value: number };
  cutColour: { value: THREE.Color };
}

const mostMarks = 4;

// A hand-polished face is never quite a mirror.
const roughness = 0.19;

// The lobe of a rough mirror is twice as wide as its slopes are steep, and these are roughness squared. Source: Walter
// et al. (2007), Microfacet models for refraction through rough surfaces, GGX. Five looks at the room, softened to fill
// the spaces between them, stand for the lobe. Left is right in a photographed room.
const mirroring = `
  uniform samplerCube softRoom;
  const float lobe = ${(2 * roughness * roughness).toFixed(4)};
  vec3 roomAt(vec3 way, float level) { return textureLod(softRoom, vec3(-way.x, way.yz), level).rgb; }
  vec3 mirrored(vec3 toEye, vec3 normal) {
    vec3 way = transformDirectionByInverseViewMatrix(reflect(-toEye, normal), viewMatrix);
    vec3 aside = normalize(abs(way.z) < 0.9 ? vec3(-way.y, way.x, 0.0) : vec3(0.0, -way.z, way.y)) * lobe;
    vec3 across = cross(way, aside);
    float level = max(0.0, log2(lobe * 0.64 * float(textureSize(softRoom, 0).x)));
    return 0.28 * roomAt(way, level) + 0.18 * (roomAt(way + aside, level) + roomAt(way - aside, level) + roomAt(way + across, level) + roomAt(way - across, level));
  }
  // What reaches the eye only after a second bounce between slopes comes from all over.
  vec3 scattered(vec3 normal) {
    return PI * roomAt(transformNormalByInverseViewMatrix(normal, viewMatrix), 16.0);
  }`;

/**
 * Polished metal of one part, with its marks and its cut face. It mirrors the room's photograph, blurred where it is
 * looked up: prefiltering the whole room would keep the first picture waiting for one finish of metal.
 */
export class Metal {
  readonly material: THREE.MeshStandardMaterial;
  private readonly places = { value: Array.from({ length: mostMarks }, () => new THREE.Vector4(0, 0, 0, 0)) };
  private readonly colours = { value: Array.from({ length: mostMarks }, () => new THREE.Color()) };
  private readonly instances = { value: new Float32Array(mostMarks).fill(-2) };

  constructor(shared: MetalShared) {
    this.material = new THREE.MeshStandardMaterial({ metalness: 1, roughness, side: THREE.DoubleSide });
    this.material.onBeforeCompile = shader => {
      const { softRoom, ...uniforms } = shared;
      Object.assign(shader.uniforms, { markPlaces: this.places, markColours: this.colours, markInstances: this.instances, softRoom: { value: softRoom }, ...uniforms });
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
          uniform vec4 cut; uniform float hasCut; uniform vec3 cutColour;
          ${mirroring}`,
        )
        .replace(
          '#include <lights_fragment_end>',
          `radiance += mirrored(geometryViewDir, geometryNormal);
          iblIrradiance += scattered(geometryNormal);
          #include <lights_fragment_end>`,
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
