import js from "@eslint/js";
import hooks from "eslint-plugin-react-hooks";
import tseslint from "typescript-eslint";

// The chain of the bench. A folder may import from itself and from those named for it, and from no other.
const MAY_USE = {
  values: [],
  wire: ["values"],
  scene: ["values", "wire"],
  state: ["values", "wire"],
  panels: ["values", "wire", "state"],
  bench: ["values", "wire", "scene", "state", "panels"],
};
const WHY = {
  values: "values are plain numbers, vectors and words: every folder uses them, so they may use none.",
  wire: "the protocol must be readable without knowing how the bench keeps or draws what it is told.",
  scene: "the drawing is told what to draw; if it knew the state, a picture could change what is measured.",
  state: "the document must work without a screen (undo, saving and tests run it alone).",
  panels: "panels are plain React over the state; three.js stays in scene, so that they can be drawn without WebGL.",
  bench: "bench puts the parts together and is used by none.",
};

const chain = Object.entries(MAY_USE).map(([folder, allowed]) => ({
  files: [`src/${folder}/**/*.{ts,tsx}`],
  rules: {
    "no-restricted-imports": [
      "error",
      {
        patterns: [
          {
            group: Object.keys(MAY_USE)
              .filter((other) => other !== folder && !allowed.includes(other))
              .map((other) => `**/${other}/**`),
            message: `Against the module direction (values ← wire ← scene, state ← panels ← bench): ${WHY[folder]}`,
          },
          ...(folder === "scene" || folder === "bench"
            ? []
            : [{ group: ["three", "three/**", "three-mesh-bvh"], message: `three.js stays in scene: ${WHY[folder]}` }]),
          ...(folder === "panels" || folder === "bench"
            ? []
            : [{ group: ["react", "react-dom", "react-dom/**"], message: `React stays in panels and bench: ${WHY[folder]}` }]),
        ].filter((pattern) => pattern.group.length > 0),
      },
    ],
  },
}));

export default tseslint.config(
  { ignores: ["dist", "node_modules", "test-results", "playwright-report"] },
  js.configs.recommended,
  ...tseslint.configs.strictTypeChecked,
  {
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      "@typescript-eslint/restrict-template-expressions": ["error", { allowNumber: true }],
      "@typescript-eslint/no-non-null-assertion": "off",
      "@typescript-eslint/no-confusing-void-expression": "off",
      "@typescript-eslint/switch-exhaustiveness-check": "error",
    },
  },
  { files: ["**/*.js"], ...tseslint.configs.disableTypeChecked },
  { files: ["src/{panels,bench}/**/*.tsx"], plugins: { "react-hooks": hooks }, rules: hooks.configs.recommended.rules },
  ...chain,
);
