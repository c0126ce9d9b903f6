// What both starts of the language server have in common.
import { window, type LogOutputChannel } from 'vscode';
import type { LanguageClientOptions } from 'vscode-languageclient';

export const language = 'setwright';

export interface Log {
  readonly channel: LogOutputChannel;
  readonly clientOptions: LanguageClientOptions;
}

export function openLog(): Log {
  const channel = window.createOutputChannel('Setwright', { log: true });
  return { channel, clientOptions: { documentSelector: [{ language }], outputChannel: channel } };
}
