import * as THREE from 'three';

/**
 * Turns light into a picture. A frame is drawn in linear light; while nothing moves, frames that look through slightly
 * different points of each pixel are added up, so that facet edges and fine highlights come out smooth.
 */
export class Developer {
  private frame: THREE.WebGLRenderTarget;
  private sum: THREE.WebGLRenderTarget;
  private readonly quad: THREE.Mesh;
  private readonly scene = new THREE.Scene();
  private readonly camera = new THREE.OrthographicCamera(-1, 1, 1, -1, 0, 1);
  private readonly adding: THREE.ShaderMaterial;
  private readonly showing: THREE.ShaderMaterial;
  private added = 0;

  constructor(private readonly renderer: THREE.WebGLRenderer, samples: number) {
    this.frame = this.target(samples, THREE.HalfFloatType, true);
    this.sum = this.target(0, THREE.FloatType, false);
    this.adding = new THREE.ShaderMaterial({
      uniforms: { picture: { value: null } },
      vertexShader: 'varying vec2 at; void main() { at = uv; gl_Position = vec4(position.xy, 0.0, 1.0); }',
      // A lamp seen in a facet is hundreds of times brighter than the room: held down here, it does not tear the edge beside it.
      fragmentShader: 'varying vec2 at; uniform sampler2D picture; void main() { gl_FragColor = min(texture2D(picture, at), vec4(14.0)); }',
      blending: THREE.CustomBlending,
      blendSrc: THREE.OneFactor,
      blendDst: THREE.OneFactor,
      blendEquation: THREE.AddEquation,
      depthTest: false,
      depthWrite: false,
    });
    this.showing = new THREE.ShaderMaterial({
      uniforms: { picture: { value: null }, share: { value: 1 } },
      vertexShader: this.adding.vertexShader,
      fragmentShader: `
        varying vec2 at; uniform sampler2D picture; uniform float share;
        void main() {
          gl_FragColor = texture2D(picture, at) * share;
          gl_FragColor.a = 1.0;
          #include <tonemapping_fragment>
          #include <colorspace_fragment>
        }`,
      depthTest: false,
      depthWrite: false,
    });
    this.quad = new THREE.Mesh(new THREE.PlaneGeometry(2, 2), this.showing);
    this.quad.frustumCulled = false;
    this.scene.add(this.quad);
  }

  /** How many frames are in the picture. */
  get count(): number {
    return this.added;
  }

  resize(width: number, height: number): void {
    this.frame.setSize(width, height);
    this.sum.setSize(width, height);
    this.added = 0;
  }

  /** Begins a new picture with one frame. */
  first(scene: THREE.Scene, camera: THREE.PerspectiveCamera): void {
    this.added = 0;
    camera.clearViewOffset();
    this.draw(scene, camera);
    this.show(this.frame.texture, 1);
  }

  /** Adds one more frame to a picture that stands still. */
  more(scene: THREE.Scene, camera: THREE.PerspectiveCamera): void {
    const { width, height } = this.frame;
    const [x, y] = offset(this.added);
    camera.setViewOffset(width, height, x, y, width, height);
    this.draw(scene, camera);
    camera.clearViewOffset();
    this.renderer.setRenderTarget(this.sum);
    this.renderer.autoClear = this.added === 0;
    this.quad.material = this.adding;
    this.adding.uniforms.picture.value = this.frame.texture;
    this.renderer.setClearColor(0x000000, 0);
    this.renderer.render(this.scene, this.camera);
    this.renderer.autoClear = true;
    this.renderer.setRenderTarget(null);
    this.added++;
    this.show(this.sum.texture, 1 / this.added);
  }

  private draw(scene: THREE.Scene, camera: THREE.PerspectiveCamera): void {
    this.renderer.setRenderTarget(this.frame);
    this.renderer.render(scene, camera);
    this.renderer.setRenderTarget(null);
  }

  private show(picture: THREE.Texture, share: number): void {
    this.quad.material = this.showing;
    this.showing.uniforms.picture.value = picture;
    this.showing.uniforms.share.value = share;
    this.renderer.render(this.scene, this.camera);
  }

  private target(samples: number, type: THREE.TextureDataType, depthBuffer: boolean): THREE.WebGLRenderTarget {
    return new THREE.WebGLRenderTarget(8, 8, { type, samples, depthBuffer });
  }
}

// Points that fill a pixel evenly from the first on. Source: Halton (1960), bases 2 and 3.
function offset(index: number): [number, number] {
  const radical = (base: number) => {
    let [value, share] = [0, 1 / base];
    for (let i = index + 1; i > 0; i = Math.floor(i / base), share /= base) value += (i % base) * share;
    return value;
  };
  return [radical(2) - 0.5, radical(3) - 0.5];
}
