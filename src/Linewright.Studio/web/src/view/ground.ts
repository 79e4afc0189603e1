import * as THREE from 'three';

const size = 512;

/** The table under the piece: nothing to see but its soft shadow, which is drawn from below and blurred. */
export class Ground {
  readonly plane: THREE.Mesh;
  private readonly camera = new THREE.OrthographicCamera(-1, 1, 1, -1, 0, 40);
  private readonly sharp = target();
  private readonly blurred = target();
  private readonly black: THREE.ShaderMaterial;
  private readonly blur: THREE.ShaderMaterial;
  private readonly quad: THREE.Mesh;
  private readonly quadScene = new THREE.Scene();
  private readonly quadCamera = new THREE.OrthographicCamera(-1, 1, 1, -1, 0, 1);

  constructor() {
    this.black = new THREE.ShaderMaterial({
      uniforms: { reach: { value: 6 } },
      vertexShader: `
        varying float high;
        void main() {
          mat4 place = modelMatrix;
          #ifdef USE_INSTANCING
            place = place * instanceMatrix;
          #endif
          vec4 seen = viewMatrix * place * vec4(position, 1.0);
          high = -seen.z;
          gl_Position = projectionMatrix * seen;
        }`,
      // The nearer to the table, the darker.
      fragmentShader: 'varying float high; uniform float reach; void main() { gl_FragColor = vec4(vec3(exp(-high / reach)), 1.0); }',
      side: THREE.DoubleSide,
    });
    this.blur = new THREE.ShaderMaterial({
      uniforms: { picture: { value: null }, step: { value: new THREE.Vector2() } },
      vertexShader: 'varying vec2 at; void main() { at = uv; gl_Position = vec4(position.xy, 0.0, 1.0); }',
      fragmentShader: `
        varying vec2 at; uniform sampler2D picture; uniform vec2 step;
        void main() {
          float sum = 0.0, weights = 0.0;
          for (int i = -8; i <= 8; i++) {
            float weight = exp(-float(i * i) / 24.0);
            sum += texture2D(picture, at + step * float(i)).r * weight;
            weights += weight;
          }
          gl_FragColor = vec4(vec3(sum / weights), 1.0);
        }`,
      depthTest: false,
      depthWrite: false,
    });
    this.quad = new THREE.Mesh(new THREE.PlaneGeometry(2, 2), this.blur);
    this.quadScene.add(this.quad);
    this.plane = new THREE.Mesh(
      new THREE.PlaneGeometry(1, 1),
      new THREE.ShaderMaterial({
        uniforms: { shadow: { value: this.sharp.texture }, depth: { value: 0.55 } },
        vertexShader: 'varying vec2 at; void main() { at = uv; gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
        fragmentShader: `
          varying vec2 at; uniform sampler2D shadow; uniform float depth;
          void main() {
            vec2 edge = smoothstep(vec2(0.0), vec2(0.12), at) * smoothstep(vec2(0.0), vec2(0.12), 1.0 - at);
            gl_FragColor = vec4(0.0, 0.0, 0.0, texture2D(shadow, at).r * depth * edge.x * edge.y);
          }`,
        transparent: true,
        depthWrite: false,
      }),
    );
    this.plane.renderOrder = -1;
  }

  set depth(depth: number) {
    (this.plane.material as THREE.ShaderMaterial).uniforms.depth.value = depth;
  }

  /** Lays the table under a box and draws the shadow of what lies in it. */
  lay(renderer: THREE.WebGLRenderer, scene: THREE.Scene, box: THREE.Box3): void {
    const middle = box.getCenter(new THREE.Vector3());
    const extent = box.getSize(new THREE.Vector3());
    const margin = 10 + 0.25 * extent.z;
    const [wide, deep] = [extent.x + 2 * margin, extent.y + 2 * margin];
    this.plane.position.set(middle.x, middle.y, box.min.z - 0.02);
    this.plane.scale.set(wide, deep, 1);

    // From under the table, looking up; the picture's x runs with the plane's.
    this.camera.left = -wide / 2;
    this.camera.right = wide / 2;
    this.camera.top = deep / 2;
    this.camera.bottom = -deep / 2;
    this.camera.far = Math.min(extent.z, 30) + 1;
    this.camera.position.set(middle.x, middle.y, box.min.z - 0.05);
    this.camera.up.set(0, -1, 0);
    this.camera.lookAt(middle.x, middle.y, box.min.z + 1);
    this.camera.updateProjectionMatrix();
    this.black.uniforms.reach.value = 1.2 + 0.12 * extent.z;

    this.plane.visible = false;
    const background = scene.background;
    scene.background = null;
    scene.overrideMaterial = this.black;
    renderer.setRenderTarget(this.sharp);
    renderer.setClearColor(0x000000, 1);
    renderer.clear();
    renderer.render(scene, this.camera);
    scene.overrideMaterial = null;
    scene.background = background;
    for (const spread of [1.6, 0.8]) {
      this.pass(renderer, this.sharp, this.blurred, (spread * 6) / wide / 8, 0);
      this.pass(renderer, this.blurred, this.sharp, 0, (spread * 6) / deep / 8);
    }
    renderer.setRenderTarget(null);
    this.plane.visible = true;
  }

  private pass(renderer: THREE.WebGLRenderer, from: THREE.WebGLRenderTarget, to: THREE.WebGLRenderTarget, x: number, y: number): void {
    this.blur.uniforms.picture.value = from.texture;
    this.blur.uniforms.step.value.set(x, y);
    renderer.setRenderTarget(to);
    renderer.render(this.quadScene, this.quadCamera);
  }
}

function target(): THREE.WebGLRenderTarget {
  return new THREE.WebGLRenderTarget(size, size, { type: THREE.HalfFloatType, depthBuffer: true });
}
