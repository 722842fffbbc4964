// What the peers of the side-by-side run share: the exported mesh and points, timing, and the line a measurement is told in.
#pragma once
#include <chrono>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

// mesh.bin: vertex count, triangle count (uint32), then x y z of each vertex [mm, float32], then the corners [uint32].
struct Mesh {
  std::vector<float> xyz;
  std::vector<uint32_t> corners;
  size_t vertices() const { return xyz.size() / 3; }
  size_t triangles() const { return corners.size() / 3; }
};

inline std::vector<char> bytesOf(const std::string& path) {
  FILE* file = fopen(path.c_str(), "rb");
  if (!file) {
    perror(path.c_str());
    exit(1);
  }
  std::vector<char> bytes;
  char part[1 << 16];
  for (size_t n; (n = fread(part, 1, sizeof part, file)) > 0;) bytes.insert(bytes.end(), part, part + n);
  fclose(file);
  return bytes;
}

inline std::vector<float> pointsOf(const std::string& path) {
  std::vector<char> bytes = bytesOf(path);
  const float* first = reinterpret_cast<const float*>(bytes.data());
  return std::vector<float>(first, first + bytes.size() / 4);
}

inline Mesh meshOf(const std::string& path) {
  std::vector<char> bytes = bytesOf(path);
  const uint32_t* counts = reinterpret_cast<const uint32_t*>(bytes.data());
  const float* xyz = reinterpret_cast<const float*>(counts + 2);
  const uint32_t* corners = counts + 2 + 3 * size_t(counts[0]);
  Mesh mesh;
  mesh.xyz.reserve(3 * size_t(counts[0]) + 4);  // Embree reads 16 bytes at the last vertex
  mesh.xyz.assign(xyz, xyz + 3 * size_t(counts[0]));
  mesh.corners.assign(corners, corners + 3 * size_t(counts[1]));
  return mesh;
}

// Runs the work twice for nothing and then so many times, and prints one line of the side-by-side run.
template <class Work>
void measure(const char* task, const std::string& size, const std::string& who, int cores, int repeats, Work work, std::string (*note)() = nullptr) {
  work();
  work();
  std::string samples;
  for (int i = 0; i < repeats; i++) {
    auto start = std::chrono::steady_clock::now();
    work();
    std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
    samples += (i ? " " : "") + std::to_string(took.count());
  }
  printf("row\t%s\t%s\t%s\t%d\t%s\t%s\n", task, size.c_str(), who.c_str(), cores, note ? note().c_str() : "", samples.c_str());
  fflush(stdout);
}
