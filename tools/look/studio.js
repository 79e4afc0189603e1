// Light: a dark warm room with bright soft boxes, which polished metal shows as broad highlights with soft ends.
import * as THREE from 'three';

/** texture: prefiltered, for metal; cube: sharp, for stones. Both in linear light. */
export function studio(renderer) {
  const room = new THREE.Scene();
  const walls = new THREE.Mesh(
    new THREE.SphereGeometry(10, 48, 24),
    new THREE.ShaderMaterial({
      side: THREE.BackSide,
      vertexShader: 'varying vec3 at; void main() { at = normalize(position); gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
      // Floor below, ceiling above, a soft change between them.
      fragmentShader: `varying vec3 at; void main() {
        float up = normalize(at).z;
        vec3 low = vec3(0.16, 0.15, 0.14), middle = vec3(0.40, 0.39, 0.38), high = vec3(0.55, 0.56, 0.58);
        gl_FragColor = vec4(up < 0.0 ? mix(middle, low, smoothstep(0.0, -0.6, up)) : mix(middle, high, smoothstep(0.0, 0.9, up)), 1.0);
      }`,
    }));
  room.add(walls);
  // Direction, width, height, brightness.
  for (const [x, y, z, width, height, brightness] of [
    [0, -1, 9, 7, 4, 6], [-8, -3, 4, 3, 6, 5], [8, -2, 3, 2, 7, 4], [2, 8, 4, 8, 2, 3], [-2, -9, 1.5, 5, 0.6, 3], [-5, -8, -1, 3, 3, 1.2], [3, -4, -6, 4, 4, 0.6],
  ]) {
    const box = new THREE.Mesh(
      new THREE.PlaneGeometry(width, height),
      new THREE.MeshBasicMaterial({ color: new THREE.Color().setScalar(brightness), side: THREE.DoubleSide }));
    box.position.set(x, y, z);
    box.lookAt(0, 0, 0);
    room.add(box);
  }
  // Flags: black cards give bright metal its dark lines.
  for (const [x, y, z, width, height] of [[-4, -7, 4, 1.2, 6], [5, -6, 5, 1, 5], [0, 5, 8, 6, 1.2]]) {
    const flag = new THREE.Mesh(new THREE.PlaneGeometry(width, height), new THREE.MeshBasicMaterial({ color: 0x080808, side: THREE.DoubleSide }));
    flag.position.set(x, y, z);
    flag.lookAt(0, 0, 0);
    room.add(flag);
  }
  const cube = new THREE.WebGLCubeRenderTarget(512, { type: THREE.HalfFloatType });
  new THREE.CubeCamera(0.1, 100, cube).update(renderer, room);
  const prefilter = new THREE.PMREMGenerator(renderer);
  const texture = prefilter.fromScene(room, 0.015).texture;
  prefilter.dispose();
  return { texture, cube: cube.texture };
}

// A plain warm grey, lighter at the top.
export function backdrop() {
  const canvas = document.createElement('canvas');
  canvas.width = 4;
  canvas.height = 512;
  const context = canvas.getContext('2d');
  const shade = context.createLinearGradient(0, 0, 0, canvas.height);
  shade.addColorStop(0, '#dedad4');
  shade.addColorStop(0.6, '#c6c1ba');
  shade.addColorStop(1, '#a39d95');
  context.fillStyle = shade;
  context.fillRect(0, 0, canvas.width, canvas.height);
  const texture = new THREE.CanvasTexture(canvas);
  texture.colorSpace = THREE.SRGBColorSpace;
  return texture;
}
