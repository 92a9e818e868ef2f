/** Lit meets signals: the host renders again when something `read` touched has changed. */
import { effect } from '@preact/signals-core';
import type { ReactiveControllerHost } from 'lit';

/** Watches for as long as the host is in a document; reads anew after each render, as the host may hold another store. */
export function watch(host: ReactiveControllerHost, read: () => unknown): void {
  let stop = () => {};
  host.addController({
    hostUpdated() {
      stop();
      let first = true;
      stop = effect(() => {
        read();
        if (!first) host.requestUpdate();
        first = false;
      });
    },
    hostConnected: () => host.requestUpdate(),
    hostDisconnected: () => stop(),
  });
}
