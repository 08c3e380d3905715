// Worksheet functions of this family; the help people see in the sheet is the comment above each.
export {};
