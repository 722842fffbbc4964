/**
 * Sends one request at a time and keeps only the newest waiting one of each key, so that a drag never makes a queue.
 * Keys wait in the order in which they first asked. Nothing is sent until {@link resume}.
 */
export class Newest<Key, Request> {
  private flying: { readonly key: Key; readonly request: Request } | null = null;
  private readonly waiting = new Map<Key, Request>();
  private ready = false;

  /**
   * @param send puts one request on the line
   * @param overtaken is told of each request that a newer one of its key replaced before it was sent
   */
  constructor(
    private readonly send: (request: Request) => void,
    private readonly overtaken: (request: Request) => void = () => undefined,
  ) {}

  get inFlight(): Request | null {
    return this.flying?.request ?? null;
  }

  get idle(): boolean {
    return this.flying === null && this.waiting.size === 0;
  }

  want(key: Key, request: Request): void {
    const older = this.waiting.get(key);
    if (older !== undefined) this.overtaken(older);
    this.waiting.set(key, request);
    this.next();
  }

  /** The request in flight was answered, or refused. */
  done(): void {
    this.flying = null;
    this.next();
  }

  /** Nobody wants any of it any more; an answer still on its way will find nobody. */
  drop(): void {
    const { flying } = this;
    this.flying = null;
    if (flying) this.overtaken(flying.request);
    for (const request of this.waiting.values()) this.overtaken(request);
    this.waiting.clear();
  }

  /** The line is open. */
  resume(): void {
    this.ready = true;
    this.next();
  }

  /** The line broke: what was in flight waits again, unless something newer of its key does. */
  pause(): void {
    this.ready = false;
    const { flying } = this;
    this.flying = null;
    if (!flying) return;
    if (this.waiting.has(flying.key)) this.overtaken(flying.request);
    else this.waiting.set(flying.key, flying.request);
  }

  private next(): void {
    if (this.flying || !this.ready) return;
    const first = this.waiting.entries().next();
    if (first.done) return;
    const [key, request] = first.value;
    this.waiting.delete(key);
    this.flying = { key, request };
    this.send(request);
  }
}
