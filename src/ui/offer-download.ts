/** A file that is ready to be taken. */
interface WrittenFile {
  readonly fileName: string;
  readonly mediaType: string;
  readonly text: string;
}

/** Hands a file made on this page to the reader's browser; nothing leaves the machine. */
export function offerDownload(file: WrittenFile): void {
  const address = URL.createObjectURL(new Blob([file.text], { type: file.mediaType }));
  const link = document.createElement('a');
  link.href = address;
  link.download = file.fileName;
  link.click();
  // The browser has its own copy by the next task.
  setTimeout(() => {
    URL.revokeObjectURL(address);
  }, 1000);
}
