declare module "gltf-validator" {
  export function validateBytes(bytes: Uint8Array): Promise<{
    issues: { numErrors: number; numWarnings: number; numInfos: number; messages: unknown[] };
  }>;
}
