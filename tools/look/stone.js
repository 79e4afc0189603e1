// A clear stone: light followed through the convex body, facet by facet, once for each of red, green and blue.
// Exact for what it does (Snell, Fresnel, total reflection); it sees the studio only, not the metal around it.
import * as THREE from 'three';

const mostPlanes = 160;
const bounces = 7;

/** The material for a mesh whose triangles bound a convex body, or null where they do not. */
export function stoneMaterial(geometry, from, studioCube) {
  const planes = facetPlanes(geometry);
  if (!planes) return null;
  return new THREE.ShaderMaterial({
    name: from.name,
    defines: { PLANES: planes.length, BOUNCES: bounces },
    uniforms: {
      planes: { value: planes },
      studio: { value: studioCube },
      tint: { value: from.color },
      // Across the visible, a stone's index changes by about a hundredth of itself: red to blue of diamond 2.41 to 2.45.
      indices: { value: new THREE.Vector3(from.ior * 0.994, from.ior, from.ior * 1.010) },
      depth: { value: from.thickness || 1 },
    },
    vertexShader: `
      varying vec3 at, eye;
      varying mat3 outwards;
      void main() {
        at = position;
        eye = (inverse(modelMatrix) * vec4(cameraPosition, 1.0)).xyz;
        outwards = mat3(normalize(modelMatrix[0].xyz), normalize(modelMatrix[1].xyz), normalize(modelMatrix[2].xyz));
        gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
      }`,
    fragmentShader: `
      uniform vec4 planes[PLANES];
      uniform samplerCube studio;
      uniform vec3 tint, indices;
      uniform float depth;
      varying vec3 at, eye;
      varying mat3 outwards;

      // The photographer stands before the light: what goes straight back is dark.
      vec3 light(vec3 way, vec3 view) {
        float behindLens = smoothstep(0.90, 0.99, dot(way, -view));
        return textureLod(studio, outwards * way, 0.0).rgb * (1.0 - 0.85 * behindLens);
      }

      // Unpolarised Fresnel reflectance from inside or outside; eta is the index ratio, from the ray's side to the other.
      float mirror(float cosine, float eta) {
        float sine2 = eta * eta * (1.0 - cosine * cosine);
        if (sine2 >= 1.0) return 1.0;
        float beyond = sqrt(1.0 - sine2);
        float s = (eta * cosine - beyond) / (eta * cosine + beyond), p = (cosine - eta * beyond) / (cosine + eta * beyond);
        return 0.5 * (s * s + p * p);
      }

      vec3 follow(vec3 from, vec3 view, vec3 normal, float index) {
        vec3 point = from, way = refract(view, normal, 1.0 / index), seen = vec3(0.0);
        float left = 1.0, walked = 0.0;
        for (int bounce = 0; bounce < BOUNCES; bounce++) {
          float near = 1e9;
          vec3 wall = normal;
          for (int i = 0; i < PLANES; i++) {
            float towards = dot(planes[i].xyz, way);
            float reach = (planes[i].w - dot(planes[i].xyz, point)) / towards;
            if (towards > 1e-5 && reach < near) { near = reach; wall = planes[i].xyz; }
          }
          near = max(near, 0.0);
          point += near * way;
          walked += near;
          float kept = mirror(dot(wall, way), index);
          if (kept < 1.0) seen += left * (1.0 - kept) * light(refract(way, -wall, index), view) * pow(tint, vec3(walked / depth));
          left *= kept;
          way = reflect(way, -wall);
          if (left < 0.02) break;
        }
        return seen + left * 0.3 * pow(tint, vec3(walked / depth));
      }

      void main() {
        vec3 normal = normalize(cross(dFdx(at), dFdy(at)));
        vec3 view = normalize(at - eye);
        if (dot(normal, view) > 0.0) normal = -normal;
        float kept = mirror(-dot(normal, view), 1.0 / indices.y);
        vec3 body = vec3(follow(at, view, normal, indices.x).r, follow(at, view, normal, indices.y).g, follow(at, view, normal, indices.z).b);
        gl_FragColor = vec4(mix(body, light(reflect(view, normal), view), kept), 1.0);
        #include <tonemapping_fragment>
        #include <colorspace_fragment>
      }`,
  });
}

// Distinct planes through the triangles, normal and distance from the origin; null for too many or a hollow body.
function facetPlanes(geometry) {
  const flat = geometry.index ? geometry.toNonIndexed() : geometry;
  const points = flat.attributes.position;
  const [a, b, c] = [0, 0, 0].map(() => new THREE.Vector3());
  const planes = [];
  for (let i = 0; i < points.count; i += 3) {
    [a, b, c].forEach((p, k) => p.fromBufferAttribute(points, i + k));
    const plane = new THREE.Plane().setFromCoplanarPoints(a, b, c);
    if (plane.normal.lengthSq() < 0.5) continue;
    const found = new THREE.Vector4(...plane.normal.toArray(), -plane.constant);
    if (planes.every(known => known.clone().sub(found).length() > 1e-3)) planes.push(found);
    if (planes.length > mostPlanes) return null;
  }
  geometry.computeBoundingSphere();
  const slack = geometry.boundingSphere.radius * 1e-3;
  for (let i = 0; i < points.count; i++) {
    a.fromBufferAttribute(points, i);
    if (planes.some(p => p.x * a.x + p.y * a.y + p.z * a.z > p.w + slack)) return null;
  }
  return planes;
}
