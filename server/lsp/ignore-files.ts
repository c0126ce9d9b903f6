/** Files that say which others do not count; read in every folder from the root down, the second has the last word. */
export const ignoreFileNames = ['.gitignore', '.ignore'] as const;
export const isIgnoreFile = (uri: string): boolean => ignoreFileNames.some((name) => uri.endsWith(`/${name}`));
