package loomwright.service.endpoint;

import java.io.IOException;
import loomwright.service.http.Reply;
import loomwright.service.http.Request;

/**
 * One line of the route table.
 *
 * @param method the HTTP method
 * @param path the template as the contract writes it, {@code /v1/examples/{name}}
 * @param operationId the operation of the contract
 * @param handler reads the request, calls one function, writes its answer
 */
public record Endpoint(Method method, String path, String operationId, Handler handler) {

    /** The methods in use. HEAD and OPTIONS follow from them. */
    public enum Method {
        GET,
        POST
    }

    /** Turns a request into a reply; what it throws becomes a problem document. */
    @FunctionalInterface
    public interface Handler {
        Reply handle(Request request) throws IOException;

        /** Told when the service is about to stop. */
        default void stop() {}
    }

    public static Endpoint get(String path, String operationId, Handler handler) {
        return new Endpoint(Method.GET, path, operationId, handler);
    }

    public static Endpoint post(String path, String operationId, Handler handler) {
        return new Endpoint(Method.POST, path, operationId, handler);
    }
}
