package loomwright.service.limits;

import java.util.List;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.service.entrance.AcceptedKey;
import loomwright.service.entrance.AccessRules;

/**
 * How the service is started.
 *
 * @param host address to listen on
 * @param port TCP port; 0 takes a free one
 * @param checkEveryRequest hold every body to the contract before it is bound, not only those that do not bind
 * @param allowedOrigins web origins whose pages may call the service; none by default
 * @param limits how much a request may ask for
 * @param calculation how much work one calculation takes on
 * @param entrance who may ask, and how often
 */
public record Options(
        String host,
        int port,
        boolean checkEveryRequest,
        List<String> allowedOrigins,
        ServiceLimits limits,
        CalculationLimits calculation,
        AccessRules entrance) {

    public static final Options DEFAULT = new Options(
            "127.0.0.1", 8080, false, List.of(), ServiceLimits.DEFAULT, CalculationLimits.DEFAULT, AccessRules.OPEN);

    public Options {
        allowedOrigins = List.copyOf(allowedOrigins);
        InputErrors faults = new InputErrors().range("/port", port, 0, 65_535);
        for (String origin : allowedOrigins) {
            faults.check(
                    origin.matches("https?://[A-Za-z0-9.-]+(:\\d{1,5})?"),
                    InputError.Code.MALFORMED,
                    "/allowOrigin",
                    origin,
                    AcceptedKey.ORIGIN);
        }
        faults.reject();
    }

    public Options withPort(int other) {
        return withAddress(host, other);
    }

    public Options withAddress(String otherHost, int otherPort) {
        return new Options(otherHost, otherPort, checkEveryRequest, allowedOrigins, limits, calculation, entrance);
    }

    public Options withCheckEveryRequest(boolean other) {
        return new Options(host, port, other, allowedOrigins, limits, calculation, entrance);
    }

    public Options withAllowedOrigins(List<String> others) {
        return new Options(host, port, checkEveryRequest, others, limits, calculation, entrance);
    }

    public Options withLimits(ServiceLimits other) {
        return new Options(host, port, checkEveryRequest, allowedOrigins, other, calculation, entrance);
    }

    public Options withCalculation(CalculationLimits other) {
        return new Options(host, port, checkEveryRequest, allowedOrigins, limits, other, entrance);
    }

    public Options withEntrance(AccessRules other) {
        return new Options(host, port, checkEveryRequest, allowedOrigins, limits, calculation, other);
    }
}
