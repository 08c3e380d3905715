// Puts the host's `CustomFunctions` global in place, so that an adapter throws in a test what it throws in a sheet.
import { installCustomFunctions } from "../../src/functions/support/custom-functions";

installCustomFunctions();
