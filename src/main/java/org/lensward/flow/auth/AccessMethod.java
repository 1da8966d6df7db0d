package org.lensward.flow.auth;

/** The ways to sign in to the record. A client certificate may be added to each. */
public enum AccessMethod {
    /** Nothing is shown: a test record, or a certificate alone. */
    NONE,
    /** Name and password, for servers that know nothing better (RFC 7617). */
    BASIC,
    /** SMART Backend Services: a token for an assertion signed with our key (HL7 SMART App Launch 2.2.0, "Backend Services"). */
    BACKEND_SERVICE
}
