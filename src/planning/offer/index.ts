export { findOffer, offerPrintout, offerTitle } from "./offer-printout";
export { isOfferSheet, issuedOffers, issuedPrintout, lastIssued, nextRevision, planOfferSheet, planRevision, type IssuedOffer } from "./offer-sheet";
export { planCosts } from "./plan-costs";
