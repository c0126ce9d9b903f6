// The line to the editor. A page has none: then nothing is sent and nothing is heard.
import { readKept, readToPlayer, type FromPlayer, type Kept, type ToPlayer } from './messages.ts';

export interface Port {
  readonly host: 'panel' | 'page';
  readonly post: (message: FromPlayer) => void;
  readonly keep: (kept: Kept) => void;
  readonly kept: Kept | undefined;
  readonly listen: (heard: (message: ToPlayer) => void) => void;
}

interface EditorApi {
  readonly postMessage: (message: unknown) => void;
  readonly getState: () => unknown;
  readonly setState: (state: unknown) => void;
}

declare const acquireVsCodeApi: (() => EditorApi) | undefined;

/** The port of this window: the editor's when it runs in a panel. May be called once. */
export function openPort(): Port {
  if (typeof acquireVsCodeApi !== 'function') {
    return { host: 'page', post: () => undefined, keep: () => undefined, kept: undefined, listen: () => undefined };
  }
  const api = acquireVsCodeApi();
  return {
    host: 'panel',
    post: (message) => api.postMessage(message),
    keep: (kept) => api.setState(kept),
    kept: readKept(api.getState()),
    listen: (heard) =>
      addEventListener('message', ({ data }) => {
        const message = readToPlayer(data);
        if (message !== undefined) heard(message);
      }),
  };
}
