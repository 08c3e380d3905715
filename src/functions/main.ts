// Entry of functions.js: hands every function to the host. Runs without a page, so that it also works alone.
import { catalogue } from "./catalogue";

for (const { id, call } of catalogue) CustomFunctions.associate(id, call);
