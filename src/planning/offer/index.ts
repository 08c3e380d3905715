export { findOffer, offerPrintout, offerTitle } from "./offer-printout";
export { isOfferSheet, issuedOffers, issuedPrintout, nextRevision, planOfferSheet, planRevision, type IssuedOffer } from "./offer-sheet";
export { planCosts } from "./plan-costs";
