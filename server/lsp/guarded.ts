// A feature that fails costs its own answer and nothing else: what went wrong is written to the editor's log, the question is answered
// with an error, and the next one is answered as if nothing had been.
import { LSPErrorCodes, ResponseError, type Connection } from 'vscode-languageserver';
import { inEnglish, message, type Say } from '../../language/message/message.ts';
import type { Host } from './host.ts';

export interface Guarded {
  readonly connection: Connection;
  readonly host: Host;
}

type Handler = (...args: readonly unknown[]) => unknown;

/** The same connection and host; whatever is registered on them, now or later, may throw. */
export function guarded(connection: Connection, host: Host, say: Say = inEnglish): Guarded {
  const log = (what: string, error: unknown) => connection.console.error(`${what} failed: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
  /** Answers that are errors on purpose (called off, refused) are no failures. */
  const failed = (what: string, error: unknown): ResponseError<void> => {
    if (error instanceof ResponseError) return error;
    log(what, error);
    return new ResponseError(LSPErrorCodes.RequestFailed, say(message('Something went wrong inside Setwright. The play is untouched, and the log says more.')));
  };

  const guardHandler = (what: string, handler: Handler): Handler => (...args) => {
    try {
      const answer = handler(...args);
      return answer instanceof Promise ? answer.catch((error: unknown) => Promise.reject(failed(what, error))) : answer;
    } catch (error) {
      throw failed(what, error);
    }
  };

  const guardObject = <Registers extends object>(object: Registers, path: string): Registers =>
    new Proxy(object, {
      get(target, key) {
        const value = Reflect.get(target, key) as unknown;
        const name = String(key);
        if (path === '' && (name === 'languages' || name === 'workspace')) return guardObject(value as object, `${name}.`);
        if (typeof value === 'object' && value !== null && path !== '') return guardObject(value, `${path}${name}.`);
        if (typeof value !== 'function' || !/^on([A-Z]|$)/.test(name)) return value;
        return (...args: readonly unknown[]) => {
          const what = typeof args[0] === 'string' ? args[0] : `${path}${name}`;
          return Reflect.apply(value, target, args.map((arg) => (typeof arg === 'function' ? guardHandler(what, arg as Handler) : arg)));
        };
      },
    });

  const guardWork = (work: () => void) => () => {
    try {
      work();
    } catch (error) {
      log('Work in the background', error);
    }
  };
  return {
    connection: guardObject(connection, ''),
    host: { ...host, turn: (work) => host.turn(guardWork(work)), later: (milliseconds, work) => host.later(milliseconds, guardWork(work)) },
  };
}
