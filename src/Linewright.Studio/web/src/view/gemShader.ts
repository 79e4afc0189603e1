/**
 * A convex stone, drawn by following light through it. The facets are exact planes (n, d): inside are the points with
 * n . p <= d. A ray that has entered is reflected from facet to facet; where it may leave, the share that does carries the
 * room's light in. Reflection by Fresnel for unpolarised light; body colour by Beer and Lambert; dispersion by three rays
 * with three indices. The girdle's many flats are one regular prism, met directly instead of flat by flat.
 */

export const gemVertex = /* glsl */ `
  out vec3 vPoint; out vec3 vNormal; out vec3 vWorld;
  flat out vec3 vEye; flat out mat3 vTurn; flat out vec3 vToEye;
  void main() {
    mat4 place = modelMatrix;
    #ifdef USE_INSTANCING
      place = place * instanceMatrix;
    #endif
    vPoint = position;
    vNormal = normal;
    vTurn = mat3(place);
    vEye = transpose(vTurn) * (cameraPosition - place[3].xyz);
    vToEye = normalize(cameraPosition - place[3].xyz);
    vec4 world = place * vec4(position, 1.0);
    vWorld = world.xyz;
    gl_Position = projectionMatrix * viewMatrix * world;
  }`;

export const gemFragment = /* glsl */ `
  precision highp float; precision highp sampler2D; precision highp samplerCube;
  in vec3 vPoint; in vec3 vNormal; in vec3 vWorld;
  flat in vec3 vEye; flat in mat3 vTurn; flat in vec3 vToEye;
  out vec4 colour;
  uniform sampler2D facets;      // a texel a facet
  uniform int facetCount;
  uniform vec4 girdle;           // flats, apothem, azimuth of the first; no girdle where flats is 0
  uniform samplerCube room;
  uniform float index, spread, roomLight;
  uniform vec3 absorbed, metal;
  uniform vec4 cut;              // section plane in the world: points with n . p > d are gone
  uniform float hasCut;

  // Light from a direction in the stone's frame. Below the girdle it comes off the setting, not from the room; from
  // straight behind the eye it does not come at all, because a head is in the way, and that is what gives contrast.
  vec3 lightFrom(vec3 way) {
    vec3 world = vTurn * way;
    vec3 light = textureLod(room, vec3(-world.x, world.yz), 0.0).rgb * roomLight;
    float below = smoothstep(0.02, -0.3, way.z);
    light = mix(light, metal * (0.06 + 0.32 * max(0.0, way.z + 0.75)), below * 0.88);
    float head = smoothstep(0.966, 0.992, dot(world, vToEye));
    return light * (1.0 - 0.92 * head);
  }

  float fresnel(float cosIn, float from, float to) {
    float ratio = from / to;
    float sin2 = ratio * ratio * (1.0 - cosIn * cosIn);
    if (sin2 >= 1.0) return 1.0;
    float cosOut = sqrt(1.0 - sin2);
    float s = (from * cosIn - to * cosOut) / (from * cosIn + to * cosOut);
    float p = (from * cosOut - to * cosIn) / (from * cosOut + to * cosIn);
    return 0.5 * (s * s + p * p);
  }

  // The way out: the nearest facet that the ray runs towards.
  void leave(vec3 from, vec3 way, out float far, out vec3 facet) {
    far = 1e9;
    facet = vec3(0.0, 0.0, 1.0);
    for (int i = 0; i < facetCount; i++) {
      vec4 plane = texelFetch(facets, ivec2(i, 0), 0);
      float towards = dot(plane.xyz, way);
      if (towards > 1e-5) {
        float t = (plane.w - dot(plane.xyz, from)) / towards;
        if (t < far) { far = t; facet = plane.xyz; }
      }
    }
    if (girdle.x > 0.5) {
      float a = dot(way.xy, way.xy);
      if (a > 1e-8) {
        float part = 6.283185307 / girdle.x;
        float outer = girdle.y / cos(part * 0.5);
        float b = dot(from.xy, way.xy), c = dot(from.xy, from.xy) - outer * outer;
        float reach = (-b + sqrt(max(0.0, b * b - a * c))) / a;
        vec2 there = from.xy + way.xy * reach;
        float k = floor((atan(there.y, there.x) - girdle.z) / part + 0.5);
        for (float i = -1.0; i < 1.5; i += 1.0) {
          float azimuth = girdle.z + (k + i) * part;
          vec2 flatFacet = vec2(cos(azimuth), sin(azimuth));
          float towards = dot(flatFacet, way.xy);
          if (towards > 1e-5) {
            float t = (girdle.y - dot(flatFacet, from.xy)) / towards;
            if (t < far) { far = t; facet = vec3(flatFacet, 0.0); }
          }
        }
      }
    }
    far = max(far, 0.0);
  }

  vec3 follow(vec3 from, vec3 way, vec3 enter, float n) {
    vec3 ray = refract(way, enter, 1.0 / n);
    vec3 left = vec3(1.0), sum = vec3(0.0);
    vec3 at = from;
    for (int bounce = 0; bounce < BOUNCES; bounce++) {
      float far; vec3 facet;
      leave(at, ray, far, facet);
      at += ray * far;
      left *= exp(-absorbed * far);
      float back = fresnel(dot(ray, facet), n, 1.0);
      if (back < 1.0) sum += left * (1.0 - back) * lightFrom(refract(ray, -facet, n));
      left *= back;
      ray = reflect(ray, facet);
      if (max(left.x, max(left.y, left.z)) < 0.012) break;
    }
    // What still runs about inside leaves somewhere, as the mean of what came so far. Assumed: a third of full light.
    return sum + left * 0.3 * lightFrom(vec3(ray.xy, abs(ray.z)));
  }

  void main() {
    if (hasCut > 0.5 && dot(cut.xyz, vWorld) > cut.w) discard;

    // Seen from inside, a stone shows where it was cut.
    if (!gl_FrontFacing) {
      float hatch = step(0.5, fract((vWorld.x - vWorld.y - vWorld.z) * 4.0));
      colour = vec4(vec3(0.42, 0.5, 0.56) * (0.86 + 0.14 * hatch), 1.0);
      return;
    }
    vec3 way = normalize(vPoint - vEye);
    vec3 facet = normalize(vNormal);
    float outside = fresnel(clamp(-dot(facet, way), 0.0, 1.0), 1.0, index);
    vec3 mirrored = outside * lightFrom(reflect(way, facet));
    #if SPECTRAL == 1
      vec3 through = vec3(
        follow(vPoint, way, facet, index - spread * 0.5).r,
        follow(vPoint, way, facet, index).g,
        follow(vPoint, way, facet, index + spread * 0.5).b);
    #else
      vec3 through = follow(vPoint, way, facet, index);
    #endif
    colour = vec4(mirrored + (1.0 - outside) * through, 1.0);
  }`;
