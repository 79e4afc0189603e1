// The page's side: load one model, light it like a small product studio, draw one frame. Units mm, z up.
import * as THREE from 'three';
import { GLTFLoader } from 'three/addons/loaders/GLTFLoader.js';
import { STLLoader } from 'three/addons/loaders/STLLoader.js';
import { toCreasedNormals } from 'three/addons/utils/BufferGeometryUtils.js';
import { studio, backdrop } from '/studio.js';
import { stoneMaterial } from '/stone.js';

const creaseAngle = 35 * Math.PI / 180;
const fieldOfViewDeg = 22;
// A close view shows this many times its subject's own size.
const surroundings = 2.5;
THREE.Object3D.DEFAULT_UP.set(0, 0, 1);

globalThis.draw = async function draw(wish) {
  const canvas = document.querySelector('canvas');
  const renderer = new THREE.WebGLRenderer({ canvas, antialias: true, preserveDrawingBuffer: true });
  renderer.setPixelRatio(1);
  renderer.setSize(innerWidth, innerHeight, false);
  renderer.toneMapping = THREE.NeutralToneMapping;
  renderer.toneMappingExposure = 1.12;
  renderer.shadowMap.enabled = true;

  const light = studio(renderer);
  const model = wish.kind === 'glb' ? await loadGlb(light) : await loadStl();
  keepPart(model, wish.part);
  const scene = new THREE.Scene();
  scene.environment = light.texture;
  scene.background = backdrop();
  scene.add(model);
  const size = frame(scene, model, wish);
  if (wish.edges) addEdges(model);
  renderer.render(scene, size.camera);
  return {
    image: canvas.toDataURL('image/png'),
    summary: { sizeMm: size.box.getSize(new THREE.Vector3()).toArray().map(v => +v.toFixed(3)), ...count(model) },
  };
};

async function loadGlb(light) {
  const { scene } = await new GLTFLoader().loadAsync('/model');
  // From metres with y up to millimetres with z up.
  const model = new THREE.Group();
  scene.rotation.x = Math.PI / 2;
  scene.scale.setScalar(1000);
  model.add(scene);
  const stones = new Map();
  scene.traverse(node => {
    if (!node.isMesh) return;
    const isClear = node.material.transmission > 0;
    if (isClear && !stones.has(node.geometry)) {
      stones.set(node.geometry, stoneMaterial(node.geometry, node.material, light.cube) ?? glass(node.material));
    }
    if (isClear) node.material = stones.get(node.geometry);
    node.castShadow = true;
    node.receiveShadow = !isClear;
  });
  return model;
}

// A stone that is no convex body is shown as bright glass.
function glass(from) {
  return new THREE.MeshPhysicalMaterial({
    name: from.name, color: from.color, metalness: 0.3, roughness: 0.02, ior: Math.min(from.ior, 2.333),
    flatShading: true, transparent: true, opacity: 0.8,
  });
}

async function loadStl() {
  const soup = await new STLLoader().loadAsync('/model');
  const silver = new THREE.MeshStandardMaterial({ color: 0xb9b9b6, metalness: 0.55, roughness: 0.42 });
  const mesh = new THREE.Mesh(toCreasedNormals(soup, creaseAngle), silver);
  mesh.castShadow = mesh.receiveShadow = true;
  return new THREE.Group().add(mesh);
}

function keepPart(model, name) {
  if (!name) return;
  const rest = [];
  model.traverse(node => { if (node.isMesh && !belongs(node, name)) rest.push(node); });
  rest.forEach(node => node.removeFromParent());
  if (!count(model).triangles) throw new Error(`no node's name starts with "${name}"`);
}

function belongs(node, name) {
  // The loader writes names with underscores for spaces.
  const plain = text => text.replaceAll('_', ' ');
  for (let at = node; at; at = at.parent) if (plain(at.name).startsWith(plain(name))) return true;
  return false;
}

// Put the camera so that every vertex fits, the lights around the model, a ground with a soft shadow under it.
function frame(scene, model, wish) {
  model.updateMatrixWorld(true);
  const box = new THREE.Box3().setFromObject(model, true);
  const reach = box.getSize(new THREE.Vector3()).length() / 2 || 1;
  const azimuth = THREE.MathUtils.degToRad(wish.azimuthDeg), elevation = THREE.MathUtils.degToRad(wish.elevationDeg);
  const towards = new THREE.Vector3(
    Math.sin(azimuth) * Math.cos(elevation), -Math.cos(azimuth) * Math.cos(elevation), Math.sin(elevation));
  const middle = box.getCenter(new THREE.Vector3());
  const subject = wish.at ? named(model, wish.at) : wish.close ? nearest(model, towards) : model;
  const centre = new THREE.Box3().setFromObject(subject, true).getCenter(new THREE.Vector3());
  const camera = new THREE.PerspectiveCamera(fieldOfViewDeg, innerWidth / innerHeight, reach / 200, reach * 60);
  camera.position.copy(centre).addScaledVector(towards, distanceToFit(subject, centre, towards, camera) * (subject === model ? 1 : surroundings) / wish.zoom);
  camera.lookAt(centre);

  const key = new THREE.DirectionalLight(0xfff4e6, 1.6);
  key.position.copy(middle).add(new THREE.Vector3(-0.6, -0.9, 1.8).multiplyScalar(reach * 2));
  key.target.position.copy(middle);
  key.castShadow = true;
  key.shadow.mapSize.set(2048, 2048);
  key.shadow.radius = 6;
  key.shadow.normalBias = reach * 0.002;
  key.shadow.bias = -0.0005;
  Object.assign(key.shadow.camera, { left: -reach * 1.2, right: reach * 1.2, top: reach * 1.2, bottom: -reach * 1.2, near: reach * 0.2, far: reach * 8 });
  scene.add(key, key.target);

  if (elevation > 0) {
    const ground = new THREE.Mesh(new THREE.PlaneGeometry(reach * 40, reach * 40), new THREE.ShadowMaterial({ opacity: 0.22 }));
    ground.position.set(middle.x, middle.y, box.min.z - reach * 0.002);
    ground.receiveShadow = true;
    scene.add(ground);
  }
  return { box, camera };
}

function named(model, name) {
  let found = null;
  model.traverse(node => { if (!found && node.isMesh && belongs(node, name)) found = node; });
  if (!found) throw new Error(`no node's name starts with "${name}"`);
  return found;
}

// The mesh whose middle comes nearest to the camera.
function nearest(model, towards) {
  let found = model, most = -Infinity;
  model.traverse(node => {
    if (!node.isMesh) return;
    const near = new THREE.Box3().setFromObject(node).getCenter(new THREE.Vector3()).dot(towards);
    if (near > most) [found, most] = [node, near];
  });
  return found;
}

function distanceToFit(model, centre, towards, camera) {
  const up = Math.abs(towards.z) > 0.99 ? new THREE.Vector3(0, 1, 0) : new THREE.Vector3(0, 0, 1);
  const right = new THREE.Vector3().crossVectors(up, towards).normalize();
  const above = new THREE.Vector3().crossVectors(towards, right);
  const tall = Math.tan(THREE.MathUtils.degToRad(fieldOfViewDeg) / 2) * 0.9, wide = tall * camera.aspect;
  const point = new THREE.Vector3();
  let distance = 0;
  model.traverse(node => {
    if (!node.isMesh) return;
    const positions = node.geometry.attributes.position;
    for (let i = 0; i < positions.count; i++) {
      point.fromBufferAttribute(positions, i).applyMatrix4(node.matrixWorld).sub(centre);
      const near = point.dot(towards);
      distance = Math.max(distance, near + Math.abs(point.dot(right)) / wide, near + Math.abs(point.dot(above)) / tall);
    }
  });
  return distance;
}

function addEdges(model) {
  const ink = new THREE.LineBasicMaterial({ color: 0x2b2926, transparent: true, opacity: 0.55 });
  const meshes = [];
  model.traverse(node => node.isMesh && meshes.push(node));
  for (const mesh of meshes) {
    mesh.material.polygonOffset = true;
    mesh.material.polygonOffsetFactor = mesh.material.polygonOffsetUnits = 1;
    mesh.add(new THREE.LineSegments(new THREE.EdgesGeometry(mesh.geometry, 35), ink));
  }
}

function count(model) {
  let meshes = 0, triangles = 0;
  model.traverse(node => {
    if (!node.isMesh) return;
    meshes++;
    triangles += (node.geometry.index ?? node.geometry.attributes.position).count / 3;
  });
  return { meshes, triangles };
}
