package loomwright.service.input;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.List;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.service.limits.ServiceLimits;
import loomwright.service.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Binds JSON bodies to records.
 *
 * <p>The records are as strict as the contract, so a good body is parsed once and the contract is asked only after
 * binding failed, to name every fault. A test holds the two to the same verdict.
 */
public final class Bodies {
    private static final Logger LOG = LoggerFactory.getLogger(Bodies.class);

    private final Json json;
    private final JsonText jsonText;
    private final ContractErrors contractFaults;
    private final boolean checkEveryRequest;

    public Bodies(Json json, ServiceLimits limits, ContractErrors contractFaults, boolean checkEveryRequest) {
        this.json = json;
        this.jsonText = new JsonText(json.mapper().getFactory(), limits);
        this.contractFaults = contractFaults;
        this.checkEveryRequest = checkEveryRequest;
    }

    /**
     * Reads a body.
     *
     * @param schema what the contract says of it
     * @throws ProblemException 400 if the text or the contract is at fault, 422 if the record alone objects
     */
    public <T> T read(byte[] body, Class<T> type, Contract.Schema schema) throws IOException {
        if (ByteScan.findNull(body) || checkEveryRequest) {
            checkByContract(body, schema);
        }
        try {
            T value = json.mapper().readValue(body, type);
            if (value != null) {
                return value;
            }
        } catch (JsonProcessingException e) {
            checkByContract(body, schema);
            throw refusalBeyondContract(e, true, json.mapper().readTree(body));
        }
        checkByContract(body, schema);
        throw new IllegalStateException("the contract accepts a body of null");
    }

    /**
     * Holds a body to the contract.
     *
     * @throws ProblemException 400 with every fault
     */
    void checkByContract(byte[] body, Contract.Schema schema) throws IOException {
        jsonText.check(body);
        JsonNode root = json.mapper().readTree(body);
        List<InputError> faults = contractFaults.of(schema, root);
        if (!faults.isEmpty()) {
            throw ProblemException.ofFaults(placed(faults, root), true, true);
        }
    }

    /**
     * Looks at the text of a body, whatever it is meant to say.
     *
     * @throws ProblemException 400 with the first fault
     */
    public void checkText(byte[] body) throws IOException {
        jsonText.check(body);
    }

    /** Faults that a calculation found in a body, with their places by the names that its writer gave. */
    List<InputError> placed(List<InputError> faults, byte[] body) throws IOException {
        return placed(faults, json.mapper().readTree(body));
    }

    private static List<InputError> placed(List<InputError> faults, JsonNode root) {
        return faults.stream().map(fault -> JsonPlace.of(fault, root)).toList();
    }

    /** For what the contract accepts and the record does not: values that are each acceptable but not together. */
    static ProblemException refusalBeyondContract(JsonProcessingException e, boolean inBody, JsonNode root) {
        String pointer = e instanceof JsonMappingException mapping ? pointer(mapping) : "";
        RejectedInput rejected = rejection(e);
        if (rejected != null) {
            return ProblemException.ofFaults(
                    placed(
                            rejected.faults().stream()
                                    .map(fault -> fault.under(pointer))
                                    .toList(),
                            root),
                    inBody,
                    false);
        }
        if (e.getCause() instanceof RuntimeException bug) {
            throw bug;
        }
        LOG.error("contract and records disagree at {}: {}", pointer, e.getOriginalMessage());
        InputError fault = new InputError(InputError.Code.WRONG_TYPE, pointer, null, Accepted.BY_CONTRACT.with());
        return ProblemException.ofFaults(List.of(fault), inBody, true);
    }

    private static @Nullable RejectedInput rejection(Throwable e) {
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof RejectedInput rejected) {
                return rejected;
            }
        }
        return null;
    }

    private static String pointer(JsonMappingException e) {
        StringBuilder pointer = new StringBuilder();
        for (JsonMappingException.Reference step : e.getPath()) {
            pointer.append('/')
                    .append(step.getFieldName() == null ? step.getIndex() : Contract.escaped(step.getFieldName()));
        }
        return pointer.toString();
    }
}
