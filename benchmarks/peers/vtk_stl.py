"""Reading a binary STL with merging of equal corners, with VTK. Usage: vtk_stl.py FOLDER REPEATS"""

import sys
import time

from vtkmodules.vtkCommonCore import vtkVersion
from vtkmodules.vtkIOGeometry import vtkSTLReader

folder, repeats = sys.argv[1], int(sys.argv[2])


def read():
    reader = vtkSTLReader()
    reader.SetFileName(folder + "/large.stl")
    reader.MergingOn()
    reader.Update()
    return reader.GetOutput()


read()
samples = []
for _ in range(repeats):
    start = time.perf_counter()
    mesh = read()
    samples.append(f"{1000 * (time.perf_counter() - start):.3f}")
who = f"VTK {vtkVersion.GetVTKVersion()} vtkSTLReader, merging"
print("row", "STL read and welded", "1M", who, 1, f"{mesh.GetNumberOfPoints()} vertices", " ".join(samples), sep="\t")
