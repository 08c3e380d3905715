// A lint rule of our own: an import that layers.json does not allow is seen in the editor, in the file that holds it.
import { relative, sep } from "node:path";
import { importFault, projectRoot } from "./layers.mjs";

/** @type {import("eslint").Rule.RuleModule} */
export const importsFollowLayers = {
  meta: { type: "problem", schema: [], docs: { description: "Holds every import below src to the table of layers." } },
  create(context) {
    const file = relative(projectRoot, context.filename).split(sep).join("/");
    if (!file.startsWith("src/")) return {};
    /** @param {{ source?: any; argument?: any }} node An import of any kind, a type's too. */
    const look = (node) => {
      const place = node.source ?? node.argument?.literal ?? node.argument;
      if (typeof place?.value !== "string") return;
      const message = importFault(file, place.value);
      if (message !== undefined) context.report({ node: place, message });
    };
    return { ImportDeclaration: look, ExportNamedDeclaration: look, ExportAllDeclaration: look, ImportExpression: look, TSImportType: look };
  },
};
