// In which colours the language server draws what stands in a hover or beside a list: those of the editor, as they change.
import { ColorThemeKind, window, type Disposable } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { picturesMethod, type Pictures } from '../server/lsp/settings.ts';

const palettes: Readonly<Record<ColorThemeKind, Pictures>> = {
  [ColorThemeKind.Light]: 'light',
  [ColorThemeKind.Dark]: 'dark',
  [ColorThemeKind.HighContrast]: 'high-contrast',
  [ColorThemeKind.HighContrastLight]: 'light',
};

export const picturesNow = (): Pictures => palettes[window.activeColorTheme.kind];

export function keepPictures(running: Promise<BaseLanguageClient>): Disposable {
  return window.onDidChangeActiveColorTheme(() => void running.then((client) => client.sendNotification(picturesMethod, picturesNow())));
}
