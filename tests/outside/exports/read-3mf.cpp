// Reads a 3MF file with lib3mf and prints a line of JSON: its unit, the reader's warnings, and of each object its name, whether it is a
// closed manifold with its triangles all seen from outside, and its volume.
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>
#include "Model/COM/NMR_DLLInterfaces.h"

using namespace NMR;

static void need(LIB3MFRESULT result, const char *what) {
  if (result == LIB3MF_OK) return;
  fprintf(stderr, "%s failed: %08x\n", what, (unsigned)result);
  exit(1);
}

int main(int count, char **args) {
  if (count != 2) return 1;
  PLib3MFModel *model = nullptr;
  PLib3MFModelReader *reader = nullptr;
  need(lib3mf_createmodel(&model), "making a model");
  need(lib3mf_model_queryreader(model, "3mf", &reader), "making a reader");
  need(lib3mf_reader_readfromfileutf8(reader, args[1]), "reading");
  DWORD warnings = 0, unit = 0;
  need(lib3mf_reader_getwarningcount(reader, &warnings), "counting warnings");
  need(lib3mf_model_getunit(model, &unit), "the unit");
  printf("{\"unit\":%u,\"warnings\":%u,\"objects\":[", (unsigned)unit, (unsigned)warnings);
  PLib3MFModelResourceIterator *objects = nullptr;
  need(lib3mf_model_getmeshobjects(model, &objects), "the objects");
  BOOL more = false;
  bool first = true;
  for (need(lib3mf_resourceiterator_movenext(objects, &more), "the next"); more;
       need(lib3mf_resourceiterator_movenext(objects, &more), "the next")) {
    PLib3MFModelResource *object = nullptr;
    need(lib3mf_resourceiterator_getcurrent(objects, &object), "an object");
    BOOL sound = false;
    DWORD vertices = 0, triangles = 0;
    ULONG length = 0;
    char name[256] = "";
    need(lib3mf_object_getnameutf8(object, name, sizeof name, &length), "a name");
    need(lib3mf_meshobject_ismanifoldandoriented(object, &sound), "soundness");
    need(lib3mf_meshobject_getvertexcount(object, &vertices), "vertices");
    need(lib3mf_meshobject_gettrianglecount(object, &triangles), "triangles");
    std::vector<MODELMESHVERTEX> at(vertices);
    for (DWORD k = 0; k < vertices; k++) need(lib3mf_meshobject_getvertex(object, k, &at[k]), "a vertex");
    double six = 0;
    for (DWORD k = 0; k < triangles; k++) {
      MODELMESHTRIANGLE t;
      need(lib3mf_meshobject_gettriangle(object, k, &t), "a triangle");
      double p[3][3];
      for (int c = 0; c < 3; c++)
        for (int i = 0; i < 3; i++)
          p[c][i] = (double)at[t.m_nIndices[c]].m_fPosition[i] - (double)at[0].m_fPosition[i];
      six += p[0][0] * (p[1][1] * p[2][2] - p[1][2] * p[2][1]) +
             p[0][1] * (p[1][2] * p[2][0] - p[1][0] * p[2][2]) +
             p[0][2] * (p[1][0] * p[2][1] - p[1][1] * p[2][0]);
    }
    printf("%s{\"name\":\"%s\",\"sound\":%s,\"volume\":%.9g}", first ? "" : ",", name, sound ? "true" : "false", six / 6);
    first = false;
  }
  printf("]}\n");
  return 0;
}
