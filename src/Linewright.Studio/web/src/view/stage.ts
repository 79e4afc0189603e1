import * as THREE from 'three';
import { Developer } from './develop';
import { Eye } from './eye';
import { Ground } from './ground';
import { Line } from './line';
import { decode, type Packet } from './packet';
import { buildRoom } from './room';

export type Light = 'light' | 'dark';

// Frames in a picture that stands still; on a slow machine fewer.
const stillFrames = 20;
const slowFrames = 3;
const slowMs = 140;
const settleMs = 160;

// Nearer than this a link fills a good part of the picture.
const closeMm = 75;

/** The view: scene, eye and light, drawn only when something has changed. */
export class Stage {
  readonly line: Line;
  readonly eye: Eye;
  readonly scene = new THREE.Scene();
  readonly renderer: THREE.WebGLRenderer;
  /** Called after each frame that moved, so that labels follow. */
  onFrame: () => void = () => {};
  /** Milliseconds from the page's opening to the first picture of metal. */
  firstPictureMs = 0;

  private readonly developer: Developer;
  private readonly ground = new Ground();
  private readonly upload: { scene: THREE.Scene; target: THREE.WebGLRenderTarget; camera: THREE.Camera; mesh: THREE.Mesh };
  /** True while something lies before the canvas: nothing is drawn. */
  isAway = false;
  private dirty = true;
  private shadowDirty = true;
  private lastChange = 0;
  private frameMs = 16;
  private lastTick = 0;
  private drewLast = false;
  private running = true;

  constructor(private readonly canvas: HTMLCanvasElement) {
    this.renderer = new THREE.WebGLRenderer({ canvas, antialias: false, powerPreference: 'high-performance' });
    this.renderer.toneMapping = THREE.NeutralToneMapping;
    this.renderer.toneMappingExposure = 1;
    this.renderer.info.autoReset = false;
    const room = buildRoom(this.renderer, this.isSlow() ? 256 : 512);
    this.developer = new Developer(this.renderer, this.isSlow() ? 0 : 4);
    this.line = new Line(room, () => this.invalidate(true));
    this.eye = new Eye(canvas, () => this.invalidate());
    this.scene.add(this.line.group, this.ground.plane);
    this.upload = {
      scene: new THREE.Scene(),
      target: new THREE.WebGLRenderTarget(1, 1),
      camera: new THREE.OrthographicCamera(-1, 1, 1, -1, 0, 1),
      mesh: new THREE.Mesh(new THREE.BufferGeometry(), new THREE.MeshBasicMaterial()),
    };
    this.upload.mesh.frustumCulled = false;
    this.upload.scene.add(this.upload.mesh);
    this.light = 'light';
    requestAnimationFrame(this.tick);
  }

  set light(light: Light) {
    if (this.scene.background instanceof THREE.Texture) this.scene.background.dispose();
    this.scene.background = backdrop(light);
    this.ground.depth = light === 'light' ? 0.5 : 0.8;
    this.invalidate();
  }

  /** Takes a packet over and puts its surfaces on the graphics card at once; returns when they are there. */
  take(bytes: ArrayBuffer, poseMs: number): Packet {
    const packet = decode(bytes);
    this.line.take(packet, poseMs);
    for (const mesh of this.line.targets()) this.send(mesh.geometry);
    this.invalidate(true);
    return packet;
  }

  invalidate(withShadow = false): void {
    this.dirty = true;
    this.shadowDirty ||= withShadow;
    this.lastChange = performance.now();
  }

  resize(width: number, height: number, ratio: number): void {
    this.renderer.setPixelRatio(ratio);
    this.renderer.setSize(width, height, false);
    const pixels = this.renderer.getDrawingBufferSize(new THREE.Vector2());
    this.developer.resize(pixels.x, pixels.y);
    this.eye.shape(width / Math.max(1, height));
    this.invalidate();
  }

  /** Width of the canvas in CSS pixels. */
  get widthPx(): number {
    return this.canvas.clientWidth;
  }

  /** A point in the world as a place on the canvas, in CSS pixels; null behind the eye. */
  project(point: THREE.Vector3): { x: number; y: number } | null {
    const seen = point.clone().project(this.eye.camera);
    return seen.z > 1 ? null : { x: ((seen.x + 1) / 2) * this.canvas.clientWidth, y: ((1 - seen.y) / 2) * this.canvas.clientHeight };
  }

  /** What lies under a place on the canvas. */
  pick(x: number, y: number): THREE.Intersection | null {
    const at = new THREE.Vector2((x / this.canvas.clientWidth) * 2 - 1, 1 - (y / this.canvas.clientHeight) * 2);
    const ray = new THREE.Raycaster();
    ray.setFromCamera(at, this.eye.camera);
    return ray.intersectObjects(this.line.targets(), false).find(hit => !this.line.isCutAway(hit.point)) ?? null;
  }

  /** What the graphics card was asked to do in the last frame. */
  figures(): { calls: number; triangles: number; geometries: number; frames: number; frameMs: number } {
    const { render, memory } = this.renderer.info;
    return { calls: render.calls, triangles: render.triangles, geometries: memory.geometries, frames: this.developer.count, frameMs: this.frameMs };
  }

  /** True once the picture stands still and is as good as it gets. */
  get isSettled(): boolean {
    return !this.dirty && this.developer.count >= this.wantedFrames;
  }

  dispose(): void {
    this.running = false;
    this.renderer.dispose();
  }

  private get wantedFrames(): number {
    return this.frameMs > slowMs ? slowFrames : stillFrames;
  }

  // Without a graphics card every pixel is paid for: a picture that moves is drawn more plainly.
  private isSlow(): boolean {
    const context = this.renderer.getContext();
    const names = context.getExtension('WEBGL_debug_renderer_info');
    return names !== null && /swiftshader|llvmpipe|software/i.test(String(context.getParameter(names.UNMASKED_RENDERER_WEBGL)));
  }

  private readonly tick = (now: number) => {
    if (!this.running) return;

    // What a frame costs shows in how long the next one is kept waiting.
    if (this.drewLast) this.frameMs = 0.6 * this.frameMs + 0.4 * (now - this.lastTick);
    this.lastTick = now;
    this.drewLast = false;
    if (this.isAway) {
      requestAnimationFrame(this.tick);
      return;
    }
    const moves = [this.line.update(now), this.eye.update(now)].some(Boolean);
    if (moves) this.invalidate(this.line.packet !== null && this.shadowDirty);
    if (this.dirty || moves) {
      this.dirty = false;
      this.draw(false);
      this.onFrame();
    } else if (now - this.lastChange > settleMs && this.developer.count < this.wantedFrames) {
      this.draw(true);
    }
    requestAnimationFrame(this.tick);
  };

  private draw(isStill: boolean): void {
    this.drewLast = true;
    this.renderer.info.reset();
    if (this.shadowDirty && this.line.packet) {
      this.ground.lay(this.renderer, this.scene, this.line.bounds());
      this.shadowDirty = false;
      this.renderer.info.reset();
    }
    this.line.lookClosely(this.eye.camera.position.distanceTo(this.eye.target) < closeMm);
    this.line.useStill(isStill);
    if (isStill) this.developer.more(this.scene, this.eye.camera);
    else this.developer.first(this.scene, this.eye.camera);
    if (!this.firstPictureMs && this.line.packet) this.firstPictureMs = performance.now();
  }

  // Drawing one triangle of it makes the card take the whole surface.
  private send(geometry: THREE.BufferGeometry): void {
    this.upload.mesh.geometry = geometry;
    geometry.setDrawRange(0, 3);
    this.renderer.setRenderTarget(this.upload.target);
    this.renderer.render(this.upload.scene, this.upload.camera);
    this.renderer.setRenderTarget(null);
    geometry.setDrawRange(0, Infinity);
  }
}

function backdrop(light: Light): THREE.Texture {
  const canvas = document.createElement('canvas');
  canvas.width = 256;
  canvas.height = 256;
  const context = canvas.getContext('2d')!;
  const shade = context.createRadialGradient(128, 96, 10, 128, 128, 210);
  for (const [at, tone] of light === 'light' ? [[0, '#f3f1ed'], [0.55, '#dcd8d1'], [1, '#b5afa6']] as const : [[0, '#545454'], [0.5, '#383838'], [1, '#222222']] as const) shade.addColorStop(at, tone);
  context.fillStyle = shade;
  context.fillRect(0, 0, 256, 256);
  const texture = new THREE.CanvasTexture(canvas);
  texture.colorSpace = THREE.SRGBColorSpace;
  return texture;
}
