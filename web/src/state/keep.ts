import { type BenchState, HOMES, type Home } from "./bench-state";
import { type CastMesh, fingerprint } from "../wire/mesh";

/** Where state outlives a reload: what HOMES says, in the browser's own stores. Storage that is switched off is no error. */
export interface Keep {
  habits(): Partial<BenchState>;
  keepHabits(state: BenchState): void;
  document(mesh: CastMesh): Partial<BenchState>;
  keepDocument(state: BenchState): void;
  /** Id of the cast that lay on the table of this tab. */
  table(): string | null;
  keepTable(castId: string): void;
}

/** Forgets everything. */
export const NO_KEEP: Keep = {
  habits: () => ({}),
  keepHabits: () => undefined,
  document: () => ({}),
  keepDocument: () => undefined,
  table: () => null,
  keepTable: () => undefined,
};

const HABITS = "rodwork.habits";
const TABLE = "rodwork.table";
/** By the surface itself, so that a file opened again brings its marks, and another of the same name does not. */
const documentKey = (mesh: CastMesh): string => `rodwork.document.${mesh.corners.length / 3}.${fingerprint(mesh)}`;

export class BrowserKeep implements Keep {
  private last: { readonly mesh: CastMesh; readonly key: string } | null = null;

  constructor(
    private readonly browser: Storage | null,
    private readonly tab: Storage | null,
  ) {}

  static ofWindow(): BrowserKeep {
    const store = (pick: () => Storage): Storage | null => {
      try {
        return pick();
      } catch {
        return null;
      }
    };
    return new BrowserKeep(
      store(() => window.localStorage),
      store(() => window.sessionStorage),
    );
  }

  habits(): Partial<BenchState> {
    return read(this.browser, HABITS, "browser");
  }

  keepHabits(state: BenchState): void {
    write(this.browser, HABITS, state, "browser");
  }

  document(mesh: CastMesh): Partial<BenchState> {
    return read(this.tab, this.key(mesh), "document");
  }

  keepDocument(state: BenchState): void {
    if (state.mesh && state.document) write(this.tab, this.key(state.mesh), state, "document");
  }

  table(): string | null {
    try {
      return this.tab?.getItem(TABLE) ?? null;
    } catch {
      return null;
    }
  }

  keepTable(castId: string): void {
    try {
      this.tab?.setItem(TABLE, castId);
    } catch {
      // Full or switched off: a reload shows the cast opened last.
    }
  }

  private key(mesh: CastMesh): string {
    if (this.last?.mesh !== mesh) this.last = { mesh, key: documentKey(mesh) };
    return this.last.key;
  }
}

const keysOf = (home: Home): (keyof BenchState)[] =>
  (Object.keys(HOMES) as (keyof BenchState)[]).filter((key) => HOMES[key] === home);

function read(storage: Storage | null, key: string, home: Home): Partial<BenchState> {
  try {
    const text = storage?.getItem(key);
    if (!text) return {};
    const kept = JSON.parse(text) as Record<string, unknown>;
    return Object.fromEntries(keysOf(home).flatMap((name) => (name in kept ? [[name, kept[name]]] : [])));
  } catch {
    return {}; // written by an older bench, or by something else
  }
}

function write(storage: Storage | null, key: string, state: BenchState, home: Home): void {
  try {
    storage?.setItem(key, JSON.stringify(Object.fromEntries(keysOf(home).map((name) => [name, state[name]]))));
  } catch {
    // Full or switched off: the bench works on, a reload forgets.
  }
}
