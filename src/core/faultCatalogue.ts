/**
 * The one catalogue of faults. A fault stops the work and reaches the person as title, message and next step; an issue with outside text
 * (a row, a panel, a statement, an assessment) is an `Issue` and travels beside the value.
 *
 * Codes are permanent: once released a code keeps its meaning. No client data rides on a fault.
 */
export const faultCatalogue = {
  'file-not-found': { title: 'File not found', blame: 'person', nextStep: 'Check the path and the spelling, then run the command again.' },
  'file-not-readable': {
    title: 'File cannot be read',
    blame: 'person',
    nextStep: 'Check that you may read this file, or copy it to a folder of your own.',
  },
  'file-too-large': {
    title: 'File is too large',
    blame: 'person',
    nextStep: 'Split the file into smaller ones and read them one after the other.',
  },
  'file-took-too-long': {
    title: 'The file took too long',
    blame: 'person',
    nextStep: 'Save the sheet alone as a new CSV or XLSX file, or split it, and read that.',
  },
  'workbook-encrypted': {
    title: 'The workbook has a password',
    blame: 'person',
    nextStep: 'Open it in a spreadsheet program, take the password off, and save it as XLSX or CSV.',
  },
  'workbook-of-another-kind': {
    title: 'This kind of workbook is not read',
    blame: 'person',
    nextStep: 'Open it in a spreadsheet program and save it as XLSX or CSV.',
  },
  'workbook-not-readable': {
    title: 'The workbook cannot be read',
    blame: 'person',
    nextStep: 'Open it in a spreadsheet program and save it anew as XLSX or CSV; where that fails, fetch the file once more.',
  },
  'table-too-large': {
    title: 'The table is too large',
    blame: 'person',
    nextStep: 'Split it, or save the columns and rows that hold labels alone as CSV, and read that.',
  },
  'photo-not-shown': {
    title: 'This is no picture that can be shown',
    blame: 'person',
    nextStep: 'Choose a JPEG, PNG or WebP picture of up to 10 MB; save one of another kind as JPEG first.',
  },
  'table-without-headings': {
    title: 'The table has no headings',
    blame: 'person',
    nextStep: 'Put the headings from docs/formats.md in the first row.',
  },
  'table-heading-twice': {
    title: 'Two columns have the same heading',
    blame: 'person',
    nextStep: 'Rename or remove one of the two columns.',
  },
  'table-heading-missing': {
    title: 'A column is missing',
    blame: 'person',
    nextStep: 'Add the column named in the message; docs/formats.md lists all headings.',
  },
  'unknown-command': { title: 'Unknown command', blame: 'person', nextStep: 'Run `platewright help` for the list of commands.' },
  'unknown-option': {
    title: 'Option not understood',
    blame: 'person',
    nextStep: 'Run `platewright help` for the options of each command.',
  },
  'option-missing': { title: 'An option is missing', blame: 'person', nextStep: 'Add the option named in the message.' },
  'plate-not-found': {
    title: 'Plate not found',
    blame: 'person',
    nextStep: 'Name a built-in plate or a plate file; docs/formats.md shows one.',
  },
  'plate-not-valid': {
    title: 'The plate file is not valid',
    blame: 'person',
    nextStep: 'Mend the place named in the message; docs/formats.md describes the format.',
  },
  'yardstick-not-found': {
    title: 'Yardstick not found',
    blame: 'person',
    nextStep: 'Run `platewright yardsticks` for the list, or name a yardstick file.',
  },
  'yardstick-not-valid': {
    title: 'The yardstick file is not valid',
    blame: 'person',
    nextStep: 'Mend the place named in the message; docs/formats.md describes the format.',
  },
  'formula-not-found': {
    title: 'Formula not found',
    blame: 'person',
    nextStep: 'Run `platewright formula` for the list, or choose one under Calculators.',
  },
  'formula-inputs-not-valid': {
    title: 'This cannot be worked out',
    blame: 'person',
    nextStep: 'Mend the inputs named in the message; `platewright formula NAME` shows what a formula asks for.',
  },
  'setting-not-known': {
    title: 'Setting not known',
    blame: 'person',
    nextStep: 'Use one of: ckd-not-on-dialysis, hemodialysis, peritoneal-dialysis, transplant.',
  },
  'setting-refused': {
    title: 'Not for this setting',
    blame: 'person',
    nextStep: 'Acute kidney injury, pregnancy and children are outside what this program may judge. Follow your local protocol.',
  },
  'food-not-found': {
    title: 'Food not found',
    blame: 'person',
    nextStep: 'It may have been removed with the demo; go back to Foods and look for it.',
  },
  'label-not-found': { title: 'Label not found', blame: 'person', nextStep: 'Go back to the food and choose one of its labels.' },
  'document-not-found': {
    title: 'Not in the workspace',
    blame: 'person',
    nextStep: 'Reload the page: it was removed, or belongs to another workspace.',
  },
  'document-not-valid': {
    title: 'It cannot be read',
    blame: 'person',
    nextStep: 'Make an archive, so that it is kept as it is, then restore the newest daily copy from before.',
  },
  'changed-meanwhile': {
    title: 'Somebody else changed this',
    blame: 'person',
    nextStep: 'Your entry is still in the form. Load the newer state, compare, and save again.',
  },
  'work-cancelled': { title: 'Cancelled', blame: 'person', nextStep: 'Nothing was kept. Begin again when you like.' },
  'client-not-found': { title: 'Client not found', blame: 'person', nextStep: 'Go back to Clients; the client may have been erased.' },
  'note-not-found': {
    title: 'Note not found',
    blame: 'person',
    nextStep: 'Go back to the client; kept notes are listed under Chart note.',
  },
  'note-too-long': {
    title: 'The note is too long',
    blame: 'person',
    nextStep: 'Shorten it, or keep a part of it as a note of its own; nothing that is typed is lost.',
  },
  'assessment-not-valid': {
    title: 'The assessment cannot be kept like this',
    blame: 'person',
    nextStep: 'Mend the places named in the message and keep it again; nothing was lost.',
  },
  'care-figure-not-valid': {
    title: 'The figure cannot be set like this',
    blame: 'person',
    nextStep: 'Give a value within the limits shown beside it, and who sets it.',
  },
  'prescription-not-complete': {
    title: 'Not ready to sign',
    blame: 'person',
    nextStep: 'Fill in what is named in the message and sign again.',
  },
  'signed-choice-left-out': {
    title: 'A choice signed before is left out',
    blame: 'person',
    nextStep: 'Decide it as before, or confirm beside the signature that it is meant to change.',
  },
  'label-not-readable': {
    title: 'The label cannot be kept like this',
    blame: 'person',
    nextStep: 'Mend the places named in the message and save again.',
  },
  'workspace-not-empty': {
    title: 'The workspace is not empty',
    blame: 'person',
    nextStep: 'Add the archive beside what is there, or make an archive, delete everything under Data, and restore then.',
  },
  'workspace-file-not-valid': {
    title: 'This is no archive',
    blame: 'person',
    nextStep: 'Choose an archive (.zip) that Platewright made, or a workspace file (.json) of an earlier one. Nothing was changed.',
  },
  'archive-not-valid': {
    title: 'The archive cannot be used',
    blame: 'person',
    nextStep: 'Nothing was changed. Choose another copy of it: the daily copies are listed under Data.',
  },
  'archive-newer': {
    title: 'The archive is of a newer program',
    blame: 'person',
    nextStep: 'Nothing was changed. Restore it with the Platewright that made it, or a newer one.',
  },
  'archive-not-found': {
    title: 'The archive is gone',
    blame: 'person',
    nextStep: 'Make it again, or choose the file again.',
  },
  'copies-folder-not-usable': {
    title: 'The folder of the daily copies cannot be used',
    blame: 'person',
    nextStep: 'Under Data, choose a folder that may be written; a disk that is to be plugged in must be there.',
  },
  'copies-folder-taken': {
    title: 'Another workspace keeps its copies there',
    blame: 'person',
    nextStep:
      'Under Data, choose another folder for the daily copies, one inside it for example. If no other workspace uses it any more, move the copies in it to a folder of their own and delete .platewright-copies.json.',
  },
  'passphrase-missing': {
    title: 'A passphrase is needed',
    blame: 'person',
    nextStep: 'Type the passphrase, or go on without the client records.',
  },
  'archive-passphrase-wrong': {
    title: 'The passphrase of the archive is wrong',
    blame: 'person',
    nextStep:
      'Type the passphrase under which the client records of this file were sealed, or leave them out and restore the rest. Nothing was changed.',
  },
  'restore-under-way': {
    title: 'A restore is running',
    blame: 'person',
    nextStep: 'Wait until it has ended, then look at what is there.',
  },
  'archive-not-made': {
    title: 'The archive was not made',
    blame: 'person',
    nextStep: 'Make room on the disk, or choose a folder that may be written, and try again. What is in the workspace is untouched.',
  },
  'database-ahead': {
    title: 'The database is newer than this program',
    blame: 'person',
    nextStep: 'Start a newer Platewright, or point PLATEWRIGHT_DATA at another folder.',
  },
  'database-locked': {
    title: 'The database is in use',
    blame: 'person',
    nextStep: 'Close the other program that uses it, then try again.',
  },
  'database-damaged': {
    title: 'The database is damaged',
    blame: 'person',
    nextStep: 'Stop the program, move its files to another place, start again, and restore the newest copy (see docs/formats.md, Archive).',
  },
  'database-missing': {
    title: 'The database is not where it was',
    blame: 'person',
    nextStep:
      'Stop the program and put its files back from a copy of the folder, or set PLATEWRIGHT_DATABASE_URL if the shelf is in PostgreSQL. `platewright start --new-shelf` begins a new shelf beside the clients, into which the newest daily copy can be restored.',
  },
  'database-read-only': {
    title: 'The database cannot be written',
    blame: 'person',
    nextStep: 'Check that you may write to the data folder and its files, then start again.',
  },
  'data-folder-not-usable': {
    title: 'The data folder cannot be used',
    blame: 'person',
    nextStep: 'Set PLATEWRIGHT_DATA to another folder, or move what is in its place, then start again.',
  },
  'database-full': {
    title: 'The disk is full',
    blame: 'person',
    nextStep: 'Make room on the disk of the database, then try again. Nothing that was saved before is lost.',
  },
  'database-unreachable': {
    title: 'The database does not answer',
    blame: 'person',
    nextStep: 'Check that PostgreSQL runs and that PLATEWRIGHT_DATABASE_URL is right, then try again.',
  },
  'outcome-unknown': {
    title: 'It is not known whether this was saved',
    blame: 'person',
    nextStep: 'It may or may not have been saved. When the database answers again, look before you repeat it.',
  },
  'clients-locked': {
    title: 'Client records are locked',
    blame: 'person',
    nextStep: 'Unlock them with their passphrase on the Clients screen.',
  },
  'passphrase-wrong': {
    title: 'The passphrase is wrong',
    blame: 'person',
    nextStep: 'Type it again; mind capitals and the keyboard. Without it nobody can read the records: they can only be erased.',
  },
  'passphrase-too-short': {
    title: 'The passphrase is too short',
    blame: 'person',
    nextStep: 'Use 15 characters or more; a few unrelated words are hard to guess and easy to keep.',
  },
  'passphrase-too-common': {
    title: 'The passphrase is guessed first',
    blame: 'person',
    nextStep: 'Take a few words that have nothing to do with each other or with this program.',
  },
  'passphrase-tries-waiting': {
    title: 'Too many passphrases at once',
    blame: 'person',
    nextStep: 'Wait a minute, then type it once.',
  },
  'clients-file-damaged': {
    title: 'The client records cannot be opened',
    blame: 'person',
    nextStep:
      'Put clients.sqlite and, where there was one, clients.key back from a backup, both of one day; or run `platewright clients set-aside --file`, which moves them aside and deletes nothing, and restore the client records from a daily copy under Data.',
  },
  'clients-file-whole': {
    title: 'The client records open',
    blame: 'person',
    nextStep: 'Run `platewright clients check` to see whether single records are damaged.',
  },
  'clients-not-empty': {
    title: 'There are client records already',
    blame: 'person',
    nextStep: 'Restore without the client records, or add them beside those here; or erase those here first, under Clients.',
  },
  'client-copy-not-valid': {
    title: 'The copy of the clients is not whole',
    blame: 'person',
    nextStep: 'Take another copy. Nothing was changed.',
  },
  'not-confirmed': {
    title: 'It was not confirmed',
    blame: 'person',
    nextStep: 'Type what is asked for, to the letter. Nothing was changed.',
  },
  'client-record-newer': {
    title: 'Written by a newer program',
    blame: 'person',
    nextStep: 'Open the workspace with the newer program. Nothing was changed.',
  },
  'client-record-damaged': {
    title: 'A client record is damaged',
    blame: 'person',
    nextStep:
      'Other records stay readable. Put back the data folder from a backup, or set aside what is damaged, on the Clients screen or by `platewright clients set-aside`: it is moved into a file of its own.',
  },
  'request-not-valid': { title: 'The request is not understood', blame: 'person', nextStep: 'Mend the places named in the message.' },
  'request-too-large': { title: 'Too much at once', blame: 'person', nextStep: 'Send a smaller file, or split it.' },
  'origin-refused': {
    title: 'Refused: not from this workbench',
    blame: 'person',
    nextStep: 'Open the address that Platewright printed when it started.',
  },
  'entry-refused': {
    title: 'Open the printed address first',
    blame: 'person',
    nextStep: 'Open the address that Platewright printed when it was started; each start prints a new one. What was saved is kept.',
  },
  'not-found': { title: 'Nothing is here', blame: 'person', nextStep: 'Go back to the workbench and follow its links.' },
  'port-not-valid': {
    title: 'This is no port',
    blame: 'person',
    nextStep: 'Set PORT to a number from 1024 to 65535, or PORT=0 for any free one.',
  },
  'port-in-use': { title: 'The port is in use', blame: 'person', nextStep: 'Set PORT to another number, or PORT=0 for any free one.' },
  'guide-not-found': {
    title: 'The guide is not there',
    blame: 'person',
    nextStep: 'Open Guides and choose one of those listed; another window may have removed it.',
  },
  'guide-not-valid': {
    title: 'The guide file is not valid',
    blame: 'person',
    nextStep: 'Mend the place named in the message; docs/formats.md describes the format.',
  },
  'handout-not-found': {
    title: 'The handout is not there',
    blame: 'person',
    nextStep: 'Open Guides and choose one of those listed; another window may have removed it.',
  },
  'handout-not-valid': {
    title: 'The handout cannot be made',
    blame: 'person',
    nextStep: 'Mend the place named in the message; docs/formats.md describes the format.',
  },
  'handout-not-signed': {
    title: 'Nothing is signed for this client',
    blame: 'person',
    nextStep: 'Sign a prescription first: the numbers of a handout come from it alone.',
  },
  'folder-not-owned': {
    title: 'The folder holds something else',
    blame: 'person',
    nextStep: 'Name a new or empty folder, or move what is not part of the site out of it. Nothing was changed.',
  },
  'browser-not-found': {
    title: 'No browser to make the PDF with',
    blame: 'person',
    nextStep:
      'Install Chromium, Chrome, Edge or Brave, or name one in PLATEWRIGHT_BROWSER; or leave out --pdf and print the page to PDF from any browser.',
  },
  'pdf-not-made': {
    title: 'The PDF could not be made',
    blame: 'person',
    nextStep: 'Try again, or leave out --pdf and print the page to PDF from any browser. The last build was kept.',
  },
  'reference-not-recognized': {
    title: 'No composition table here',
    blame: 'person',
    nextStep:
      'Unpack the download and name its folder, or choose its files: FOOD_DES.txt and NUT_DATA.txt of USDA SR, or food.csv and food_nutrient.csv of FoodData Central.',
  },
  'reference-not-valid': {
    title: 'The reference file is not valid',
    blame: 'person',
    nextStep: 'Make it again with `platewright reference import`; docs/formats.md describes the format.',
  },
  'reference-not-found': {
    title: 'Composition table not found',
    blame: 'person',
    nextStep: 'It may have been removed in another window; reload Data.',
  },
  'line-not-json': { title: 'A line is not JSON', blame: 'person', nextStep: 'Give one JSON object a line, as docs/formats.md shows.' },
  'output-not-written': {
    title: 'The results cannot be written',
    blame: 'person',
    nextStep: 'Free some space or choose another place, then run the command again.',
  },
  'runtime-too-old': {
    title: 'This Node is too old',
    blame: 'person',
    nextStep: 'Start the program through `npm start` or `bin/platewright` in its own folder.',
  },
  'program-fault': {
    title: 'The program made a mistake',
    blame: 'program',
    nextStep: 'Nothing was changed. Keep the message and report it with the steps that led here.',
  },
} as const satisfies Record<string, FaultFacts>;

export interface FaultFacts {
  readonly title: string;
  /** Whose move it is: exit code 1 for a person's mistake, 2 for the program's. */
  readonly blame: 'person' | 'program';
  readonly nextStep: string;
}
