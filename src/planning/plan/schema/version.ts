/**
 * Version of the layout of the planning tables: which tables there are, and under which headers their columns stand.
 *
 * It goes up by one whenever a table or a column is added or a header changes, so that a workbook made by an earlier release can be told
 * apart and brought up by adding what it lacks; nothing that stands in it is ever moved. A test holds the layout of each version.
 * A further table does not raise it when it is added: a plan without one is whole.
 */
export const schemaVersion = 5;
