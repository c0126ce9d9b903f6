import { LSPErrorCodes, ResponseError, type CancellationToken } from 'vscode-languageserver';
import type { Host } from './host.ts';

// A request and its cancellation often arrive one right behind the other; a millisecond lets the second be read before the
// work for the first begins.
const letMessagesIn = (host: Pick<Host, 'later'>) => new Promise<void>((resolve) => void host.later(0, resolve));

/**
 * Does the work of a request, unless the editor no longer wants it: then the answer is the error -32800 (request
 * cancelled) of the Language Server Protocol, as it asks for.
 */
export async function answerUnlessCancelled<Answer>(host: Pick<Host, 'later'>, token: CancellationToken, work: () => Answer | Promise<Answer>): Promise<Answer> {
  await letMessagesIn(host);
  stopIfCancelled(token);
  const answer = await work();
  stopIfCancelled(token);
  return answer;
}

export const calledOff = (): ResponseError<void> => new ResponseError(LSPErrorCodes.RequestCancelled, 'The editor no longer asks for this.');

function stopIfCancelled(token: CancellationToken) {
  if (token.isCancellationRequested) throw calledOff();
}
