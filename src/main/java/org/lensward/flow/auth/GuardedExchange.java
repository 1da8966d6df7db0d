package org.lensward.flow.auth;

import java.io.IOException;
import java.net.URI;
import java.util.Optional;
import org.apache.http.Header;
import org.apache.http.HttpEntity;
import org.apache.http.HttpEntityEnclosingRequest;
import org.apache.http.HttpException;
import org.apache.http.HttpHeaders;
import org.apache.http.client.methods.CloseableHttpResponse;
import org.apache.http.client.methods.HttpExecutionAware;
import org.apache.http.client.methods.HttpRequestWrapper;
import org.apache.http.client.protocol.HttpClientContext;
import org.apache.http.conn.routing.HttpRoute;
import org.apache.http.impl.execchain.ClientExecChain;

/**
 * One request to the record and its answer. Only the record's own address is asked, wherever a page link or a redirect points; a token it
 * no longer takes (401) is renewed once and the request sent once more.
 */
final class GuardedExchange implements ClientExecChain {

    private final ClientExecChain next;
    private final Origin record;
    private final Credentials credentials;

    GuardedExchange(ClientExecChain next, Origin record, Credentials credentials) {
        this.next = next;
        this.record = record;
        this.credentials = credentials;
    }

    @Override
    public CloseableHttpResponse execute(
            HttpRoute route, HttpRequestWrapper request, HttpClientContext context, HttpExecutionAware aware)
            throws IOException, HttpException {
        URI target = URI.create(route.getTargetHost().toURI());
        if (!record.isSame(target)) {
            throw OwnAddressOnly.elsewhere(record, "A request", target.getHost());
        }
        Optional<String> header = credentials.header();
        header.ifPresent(each -> request.setHeader(HttpHeaders.AUTHORIZATION, each));
        CloseableHttpResponse answer = next.execute(route, request, context, aware);
        if (answer.getStatusLine().getStatusCode() == 401 && header.isPresent() && isRepeatable(request)) {
            answer.close();
            if (credentials.renew(header.get())) {
                request.setHeader(
                        HttpHeaders.AUTHORIZATION, credentials.header().orElseThrow());
            }
            answer = next.execute(route, request, context, aware);
        }
        refuseRedirect(answer);
        return answer;
    }

    private static boolean isRepeatable(HttpRequestWrapper request) {
        HttpEntity entity = request instanceof HttpEntityEnclosingRequest enclosing ? enclosing.getEntity() : null;
        return entity == null || entity.isRepeatable();
    }

    private void refuseRedirect(CloseableHttpResponse answer) throws IOException {
        int status = answer.getStatusLine().getStatusCode();
        Header location = answer.getFirstHeader(HttpHeaders.LOCATION);
        if (status >= 300 && status < 400 && status != 304) {
            answer.close();
            throw OwnAddressOnly.elsewhere(
                    record, "A redirect", location == null ? "nowhere" : host(location.getValue()));
        }
    }

    private String host(String location) {
        try {
            return Optional.ofNullable(URI.create(location).getHost()).orElse(record.host());
        } catch (IllegalArgumentException noAddress) {
            return "no address";
        }
    }
}
