// What the scripts in workers use beside the names that every worker has, for the check of their types.

declare var leavewellCarried: { program: any; wasm(): BufferSource } | undefined;

interface WorkerGlobalScope {
  leavewellCarried: typeof leavewellCarried;
  postMessage(message: unknown): void;
}

// The service worker's own.
interface WorkerGlobalScope {
  clients: Clients;
  registration: ServiceWorkerRegistration;
  skipWaiting(): Promise<void>;
}

interface WorkerGlobalScopeEventMap {
  activate: ExtendableEvent;
  fetch: FetchEvent;
  install: ExtendableEvent;
  message: Event & { data: any };
}
