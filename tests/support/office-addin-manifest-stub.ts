// office-addin-mock asks its manifest library only for the names of the hosts; the library itself ships modules jest cannot load.
export enum OfficeApp {
  Excel = "excel",
  OneNote = "onenote",
  Outlook = "outlook",
  PowerPoint = "powerpoint",
  Project = "project",
  Word = "word",
}
