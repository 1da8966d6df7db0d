package org.lensward.flow.auth;

import ca.uhn.fhir.rest.client.api.IClientInterceptor;
import ca.uhn.fhir.rest.client.api.IHttpRequest;
import ca.uhn.fhir.rest.client.api.IHttpResponse;
import java.net.URI;
import org.lensward.finding.FindingCode;
import org.lensward.flow.RecordRefusal;

/** Asks nobody but the record, wherever a page link of the record points. */
final class OwnAddressOnly implements IClientInterceptor {

    private final Origin record;

    OwnAddressOnly(Origin record) {
        this.record = record;
    }

    @Override
    public void interceptRequest(IHttpRequest request) {
        URI url = URI.create(request.getUri());
        if (!record.isSame(url)) {
            throw elsewhere(record, "A page link", String.valueOf(url.getHost()));
        }
    }

    @Override
    public void interceptResponse(IHttpResponse response) {}

    /** The refusal to go there. */
    static RecordRefusal elsewhere(Origin record, String what, String host) {
        return new RecordRefusal(FindingCode.RECORD_POINTS_ELSEWHERE, record.host(), what, host);
    }
}
