/** A value with listeners: the smallest store that React's useSyncExternalStore can follow. */
export class Store<T extends object> {
  private readonly listeners = new Set<() => void>();

  constructor(private value: T) {}

  readonly get = (): T => this.value;

  set(change: Partial<T>): void {
    this.value = { ...this.value, ...change };
    for (const listener of [...this.listeners]) listener();
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  };
}
