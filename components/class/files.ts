/** Files that a teacher drops or picks, alone or in folders. */

/** Names of files that systems leave in folders, and that no one handed in. */
const NOBODYS = /^(?:\.|Thumbs\.db$|desktop\.ini$|__MACOSX)/i;

/** A file, and what it is called in the table: its name with the folders above it. */
export interface Named {
  readonly name: string;
  readonly file: File;
}

/** Files that were picked, those of a folder with its name before theirs. */
export function pickedFiles(files: Iterable<File>): readonly Named[] {
  return [...files]
    .filter(({ name }) => !NOBODYS.test(name))
    .map((file) => ({ name: file.webkitRelativePath || file.name, file }));
}

/** Files that were dropped, alone or in folders. The entries must be asked for before anything is waited for. */
export async function droppedFiles(transfer: DataTransfer): Promise<readonly Named[]> {
  const entries = [...transfer.items].flatMap((item) => item.webkitGetAsEntry() ?? []);
  return (await Promise.all(entries.map(filesUnder))).flat();
}

async function filesUnder(entry: FileSystemEntry): Promise<readonly Named[]> {
  if (NOBODYS.test(entry.name)) return [];
  if (isFile(entry)) {
    const file = await new Promise<File>((resolve, reject) => entry.file(resolve, reject));
    return [{ name: entry.fullPath.replace(/^\//, ''), file }];
  }
  return (await Promise.all((await entriesOf(entry as FileSystemDirectoryEntry)).map(filesUnder))).flat();
}

const isFile = (entry: FileSystemEntry): entry is FileSystemFileEntry => entry.isFile;

/** A folder gives its entries by the hundred until there are none left. */
async function entriesOf(folder: FileSystemDirectoryEntry): Promise<readonly FileSystemEntry[]> {
  const reader = folder.createReader();
  const all: FileSystemEntry[] = [];
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((resolve, reject) =>
      reader.readEntries(resolve, reject),
    );
    if (some.length === 0) return all;
    all.push(...some);
  }
}
