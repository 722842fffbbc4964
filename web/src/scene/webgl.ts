/** Whether this browser can draw the cast; null when it can, else what to tell a person. */
export function webglMissing(): string | null {
  const canvas = document.createElement("canvas");
  const context = canvas.getContext("webgl2");
  if (!context) return "This browser cannot draw in three dimensions: WebGL 2 is missing or switched off.";
  context.getExtension("WEBGL_lose_context")?.loseContext();
  return null;
}
