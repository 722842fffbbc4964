// Hidden vertices and closest points with Embree. Usage: embree FOLDER CORES REPEATS
#include <embree3/rtcore.h>
#include <pmmintrin.h>
#include <tbb/blocked_range.h>
#include <tbb/global_control.h>
#include <tbb/parallel_for.h>
#include <xmmintrin.h>

#include <cmath>

#include "mesh.hpp"

static RTCDevice device;
static Mesh mesh;
static std::vector<uint8_t> hidden;
static std::vector<float> distance;

static void flushDenormals() {
  _MM_SET_FLUSH_ZERO_MODE(_MM_FLUSH_ZERO_ON);
  _MM_SET_DENORMALS_ZERO_MODE(_MM_DENORMALS_ZERO_ON);
}

static RTCScene build() {
  RTCScene scene = rtcNewScene(device);
  rtcSetSceneFlags(scene, RTC_SCENE_FLAG_ROBUST);
  rtcSetSceneBuildQuality(scene, RTC_BUILD_QUALITY_MEDIUM);
  RTCGeometry geometry = rtcNewGeometry(device, RTC_GEOMETRY_TYPE_TRIANGLE);
  rtcSetSharedGeometryBuffer(geometry, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3, mesh.xyz.data(), 0, 12, mesh.vertices());
  rtcSetSharedGeometryBuffer(geometry, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3, mesh.corners.data(), 0, 12, mesh.triangles());
  rtcCommitGeometry(geometry);
  rtcAttachGeometry(scene, geometry);
  rtcReleaseGeometry(geometry);
  rtcCommitScene(scene);
  return scene;
}

template <class Body>
static void parallel(size_t n, Body body) {
  tbb::parallel_for(tbb::blocked_range<size_t>(0, n, 2048), [&](const tbb::blocked_range<size_t>& range) {
    flushDenormals();
    for (size_t i = range.begin(); i < range.end(); i++) body(i);
  });
}

static void findHidden(RTCScene scene) {
  parallel(mesh.vertices(), [&](size_t i) {
    RTCIntersectContext context;
    rtcInitIntersectContext(&context);
    RTCRay ray = {};
    ray.org_x = mesh.xyz[3 * i];
    ray.org_y = mesh.xyz[3 * i + 1];
    ray.org_z = mesh.xyz[3 * i + 2];
    ray.dir_z = 1;
    ray.tnear = 1e-3f;
    ray.tfar = 1e9f;
    ray.mask = -1;
    rtcOccluded1(scene, &context, &ray);
    hidden[i] = ray.tfar < 0;
  });
}

static float dot(const float* a, const float* b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

// Squared distance of p to a triangle, by the regions of its plane (C. Ericson, Real-Time Collision Detection, 2005, 5.1.5).
static float squaredDistance(const float* p, const float* a, const float* b, const float* c) {
  float ab[3], ac[3], ap[3], bp[3], cp[3];
  for (int k = 0; k < 3; k++) {
    ab[k] = b[k] - a[k];
    ac[k] = c[k] - a[k];
    ap[k] = p[k] - a[k];
    bp[k] = p[k] - b[k];
    cp[k] = p[k] - c[k];
  }
  float d1 = dot(ab, ap), d2 = dot(ac, ap), d3 = dot(ab, bp), d4 = dot(ac, bp), d5 = dot(ab, cp), d6 = dot(ac, cp);
  float va = d3 * d6 - d5 * d4, vb = d5 * d2 - d1 * d6, vc = d1 * d4 - d3 * d2;
  float v, w;
  if (d1 <= 0 && d2 <= 0) {
    v = w = 0;
  } else if (d3 >= 0 && d4 <= d3) {
    v = 1, w = 0;
  } else if (vc <= 0 && d1 >= 0 && d3 <= 0) {
    v = d1 / (d1 - d3), w = 0;
  } else if (d6 >= 0 && d5 <= d6) {
    v = 0, w = 1;
  } else if (vb <= 0 && d2 >= 0 && d6 <= 0) {
    v = 0, w = d2 / (d2 - d6);
  } else if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
    w = (d4 - d3) / ((d4 - d3) + (d5 - d6)), v = 1 - w;
  } else {
    v = vb / (va + vb + vc), w = vc / (va + vb + vc);
  }
  float d[3];
  for (int k = 0; k < 3; k++) d[k] = ap[k] - v * ab[k] - w * ac[k];
  return dot(d, d);
}

static bool nearer(RTCPointQueryFunctionArguments* args) {
  const uint32_t* corner = &mesh.corners[3 * size_t(args->primID)];
  float p[3] = {args->query->x, args->query->y, args->query->z};
  float d = sqrtf(squaredDistance(p, &mesh.xyz[3 * size_t(corner[0])], &mesh.xyz[3 * size_t(corner[1])], &mesh.xyz[3 * size_t(corner[2])]));
  if (d >= args->query->radius) return false;
  args->query->radius = d;
  return true;
}

static void findClosest(RTCScene scene, const std::vector<float>& points) {
  distance.resize(points.size() / 3);
  parallel(distance.size(), [&](size_t i) {
    RTCPointQueryContext context;
    rtcInitPointQueryContext(&context);
    RTCPointQuery query = {points[3 * i], points[3 * i + 1], points[3 * i + 2], 0, INFINITY};
    rtcPointQuery(scene, &query, &context, nearer, nullptr);
    distance[i] = query.radius;
  });
}

static std::string hiddenNote() {
  size_t count = 0;
  for (uint8_t h : hidden) count += h;
  return std::to_string(count) + " hidden";
}

static std::string distanceNote() {
  double sum = 0;
  for (float d : distance) sum += d;
  char text[64];
  snprintf(text, sizeof text, "mean %.5f mm", sum / distance.size());
  return text;
}

int main(int argc, char** argv) {
  if (argc != 4) {
    fprintf(stderr, "usage: embree FOLDER CORES REPEATS\n");
    return 2;
  }
  std::string folder = argv[1], who = "Embree " RTC_VERSION_STRING;
  std::vector<char> text = bytesOf(folder + "/size.txt");
  std::string size(text.begin(), text.end());
  int cores = atoi(argv[2]), repeats = atoi(argv[3]);
  flushDenormals();
  mesh = meshOf(folder + "/mesh.bin");
  hidden.resize(mesh.vertices());
  tbb::global_control limit(tbb::global_control::max_allowed_parallelism, cores);
  device = rtcNewDevice(("threads=" + std::to_string(cores)).c_str());

  measure("tree built", size, who, cores, repeats, [] { rtcReleaseScene(build()); });
  measure("hidden vertices", size, who + ", tree and answer", cores, repeats, [] {
    RTCScene scene = build();
    findHidden(scene);
    rtcReleaseScene(scene);
  }, hiddenNote);
  RTCScene scene = build();
  measure("hidden vertices", size, who + ", tree at hand", cores, repeats, [&] { findHidden(scene); }, hiddenNote);
  FILE* out = fopen((folder + "/hidden-embree.bin").c_str(), "wb");
  fwrite(hidden.data(), 1, hidden.size(), out);
  fclose(out);
  std::vector<float> near = pointsOf(folder + "/near.bin"), anywhere = pointsOf(folder + "/anywhere.bin");
  measure("closest points near", size, who, cores, repeats, [&] { findClosest(scene, near); }, distanceNote);
  measure("closest points anywhere", size, who, cores, repeats, [&] { findClosest(scene, anywhere); }, distanceNote);
}
