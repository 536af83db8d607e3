/** Saves a text as a file, without asking any server. */
export function download(text: string, name: string, type: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The browser takes the file up after this call.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
